package sealspan.study;

import java.util.Collection;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;
import sealspan.avro.TableCodec;
import sealspan.table.AssemblyRows;

/**
 * The rows of the assemblies that something is made from, in ascending order of assembly id. They
 * may be gone through any number of times and are the same every time. There may be more of them
 * than memory holds: who goes through them keeps what it needs of each, never the rows.
 */
public interface Members extends Iterable<AssemblyRows> {

  /** Number of assemblies. */
  int size();

  /** Shows the bytes of each by {@link TableCodec}, in the same order. */
  void packed(Consumer<byte[]> each);

  /** Members in memory, given in any order. */
  static Members of(Collection<AssemblyRows> rows) {
    List<AssemblyRows> sorted =
        rows.stream().sorted(Comparator.comparing(AssemblyRows::assemblyId)).toList();
    return new Members() {
      @Override
      public int size() {
        return sorted.size();
      }

      @Override
      public Iterator<AssemblyRows> iterator() {
        return sorted.iterator();
      }

      @Override
      public void packed(Consumer<byte[]> each) {
        sorted.forEach(member -> each.accept(TableCodec.encode(member)));
      }
    };
  }
}
