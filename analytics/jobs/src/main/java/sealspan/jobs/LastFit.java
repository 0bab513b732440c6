package sealspan.jobs;

import java.util.Arrays;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import sealspan.avro.TableCodec;
import sealspan.study.LatestFits;
import sealspan.table.FitRows;

/**
 * The newest fit, which comes stratum by stratum: nothing of an older one counts once a newer has
 * begun. The result does not depend on the order of arrival.
 */
final class LastFit {
  private final Map<String, FitRows> byStratum = new TreeMap<>();
  private LatestFits latest = LatestFits.none();
  private long revision;
  private long mark;

  LastFit(Collection<FitRows> fits) {
    fits.forEach(this::add);
  }

  /** Takes in the fit of a stratum; tells whether it is news. */
  boolean add(FitRows fit) {
    if (fit.revision() < revision) {
      return false;
    }
    if (fit.revision() > revision) {
      byStratum.clear();
      revision = fit.revision();
    }
    boolean news = !fit.equals(byStratum.put(fit.stratum(), fit));
    if (news) {
      settle();
    }
    return news;
  }

  private void settle() {
    mark = revision;
    for (FitRows fit : byStratum.values()) {
      mark = 31 * mark + Arrays.hashCode(TableCodec.encode(fit));
    }
    latest = null;
  }

  /** Revision of the cut; 0 before the first. */
  long revision() {
    return revision;
  }

  /** The fit, ready for scoring; prepared when first asked for. */
  LatestFits latest() {
    if (latest == null) {
      latest = LatestFits.of(byStratum.values());
    }
    return latest;
  }

  /** Tells one fit from another, also after a restart. */
  long mark() {
    return mark;
  }
}
