package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import sealspan.avro.TableCodec;
import sealspan.table.Bundle;

/** The rows of an assembly or a zone on their way to what is made of many together. */
public final class Member {
  static final TypeInformation<Member> TYPE = Types.POJO(Member.class);

  /** The stratum, or the key of the study of fouling. */
  public String stratum;

  /** Key of the rows. */
  public String key;

  /** Its rows, by {@link TableCodec}. */
  public byte[] rows;

  /** For Flink. */
  public Member() {}

  Member(String stratum, Bundle rows) {
    this(stratum, rows.key(), TableCodec.encode(rows));
  }

  Member(String stratum, String key, byte[] rows) {
    this.stratum = stratum;
    this.key = key;
    this.rows = rows;
  }
}
