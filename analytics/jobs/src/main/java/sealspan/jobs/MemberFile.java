package sealspan.jobs;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;
import sealspan.avro.TableCodec;
import sealspan.study.Members;
import sealspan.table.AssemblyRows;

/**
 * Members packed in a temporary file; memory holds the id and the place of each, and unpacks one at
 * a time. The file is deleted when this is closed. Where the system can delete an open file, it has
 * no name from the start, and goes with the process whatever ends it.
 *
 * <p>First all are added, then they are gone through. Not safe for several threads.
 */
final class MemberFile implements Members, AutoCloseable {
  private static final int BUFFER_BYTES = 1 << 16;

  /** Where the rows of an assembly lie. */
  private record Place(String key, long offset, int length) {}

  private final Path folder;
  private final FileChannel file;
  private final OutputStream end;
  private final List<Place> places = new ArrayList<>();
  private long length;
  private boolean sorted = true;

  private MemberFile(Path folder, FileChannel file) {
    this.folder = folder;
    this.file = file;
    this.end = new BufferedOutputStream(Channels.newOutputStream(file), BUFFER_BYTES);
  }

  /**
   * An empty file.
   *
   * @throws JobException when the folder cannot be written
   */
  static MemberFile in(Path folder) {
    try {
      Files.createDirectories(folder);
      Path path = Files.createTempFile(folder, "members", ".rows");
      return new MemberFile(
          folder,
          FileChannel.open(
              path,
              StandardOpenOption.READ,
              StandardOpenOption.WRITE,
              StandardOpenOption.DELETE_ON_CLOSE));
    } catch (IOException e) {
      throw full(folder, e);
    }
  }

  /**
   * Takes in a member.
   *
   * @param key key of its rows, each but once
   * @param packed its rows, by {@link TableCodec}
   * @throws JobException when the folder takes no more
   */
  void add(String key, byte[] packed) {
    try {
      end.write(packed);
    } catch (IOException e) {
      throw full(folder, e);
    }
    places.add(new Place(key, length, packed.length));
    length += packed.length;
    sorted = false;
  }

  private static JobException full(Path folder, IOException e) {
    return new JobException(
        "The folder %s does not take the rows that a fit is made from (%s). Check its rights and its"
                .formatted(folder, JobTrouble.words(e))
            + " space.",
        e);
  }

  @Override
  public int size() {
    return places.size();
  }

  @Override
  public Iterator<AssemblyRows> iterator() {
    Iterator<Place> each = inOrder().iterator();
    return new Iterator<>() {
      @Override
      public boolean hasNext() {
        return each.hasNext();
      }

      @Override
      public AssemblyRows next() {
        return TableCodec.decode(read(each.next()), AssemblyRows.class);
      }
    };
  }

  @Override
  public void packed(Consumer<byte[]> each) {
    inOrder().forEach(place -> each.accept(read(place)));
  }

  private List<Place> inOrder() {
    if (!sorted) {
      try {
        end.flush();
      } catch (IOException e) {
        throw full(folder, e);
      }
      places.sort(Comparator.comparing(Place::key));
      sorted = true;
    }
    return places;
  }

  private byte[] read(Place place) {
    byte[] packed = new byte[place.length()];
    ByteBuffer into = ByteBuffer.wrap(packed);
    try {
      while (into.hasRemaining()) {
        if (file.read(into, place.offset() + into.position()) < 0) {
          throw new IOException("the file ends before the rows of " + place.key());
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return packed;
  }

  /** Deletes the file; to be called any number of times. */
  @Override
  public void close() {
    places.clear();
    try {
      file.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
