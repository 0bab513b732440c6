package sealspan.ingest.source;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** A text file opened for reading, its encoding told by a byte-order mark or by the user. */
final class TextFile implements AutoCloseable {
  private static final int LOOK_BYTES = 4096;

  private final BufferedInputStream bytes;
  private final Counted counted;
  private final Charset charset;
  private final long totalBytes;

  private TextFile(BufferedInputStream bytes, Counted counted, Charset charset, long totalBytes) {
    this.bytes = bytes;
    this.counted = counted;
    this.charset = charset;
    this.totalBytes = totalBytes;
  }

  /**
   * Opens a file.
   *
   * @param encoding name of the encoding; null for UTF-8 or what a byte-order mark says
   * @throws SourceException where it is missing, empty, a folder or no text
   */
  static TextFile open(Path file, String encoding) throws SourceException {
    Charset asked = encoding == null ? null : charset(encoding);
    if (Files.isDirectory(file)) {
      throw new SourceException(file + " is a folder. Name a file in it.");
    }
    try {
      long total = Files.size(file);
      Counted counted = new Counted(Files.newInputStream(file));
      BufferedInputStream bytes = new BufferedInputStream(counted, 1 << 16);
      try {
        return open(file, bytes, counted, asked, total);
      } catch (SourceException | IOException e) {
        bytes.close();
        throw e;
      }
    } catch (NoSuchFileException e) {
      throw new SourceException("There is no file " + file + ". Check the path.", e);
    } catch (AccessDeniedException e) {
      throw new SourceException(file + " may not be read. Check its permissions.", e);
    } catch (IOException e) {
      throw new SourceException(file + " cannot be read: " + e.getMessage() + ".", e);
    }
  }

  private static TextFile open(
      Path file, BufferedInputStream bytes, Counted counted, Charset asked, long total)
      throws IOException, SourceException {
    bytes.mark(LOOK_BYTES);
    byte[] look = bytes.readNBytes(LOOK_BYTES);
    bytes.reset();
    if (look.length == 0) {
      throw new SourceException(file + " is empty. Nothing was read.");
    }
    refuseOtherFiles(file, look);
    int mark = markLength(look);
    Charset marked = marked(look);
    bytes.skipNBytes(mark);
    Charset charset = marked != null ? marked : asked != null ? asked : StandardCharsets.UTF_8;
    if (marked == null && asked == null) {
      refuseUnmarkedUtf16(file, look);
    }
    boolean wide = charset.name().startsWith("UTF-16") || charset.name().startsWith("UTF-32");
    return wide
        ? new TextFile(
            new BufferedInputStream(new Utf8Stream(bytes, charset)),
            counted,
            StandardCharsets.UTF_8,
            total)
        : new TextFile(bytes, counted, charset, total);
  }

  private static Charset charset(String name) throws SourceException {
    try {
      return Charset.forName(name);
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      throw new SourceException(
          "'" + name + "' is no encoding. Write such as UTF-8, UTF-16 or windows-1252.", e);
    }
  }

  private static void refuseOtherFiles(Path file, byte[] look) throws SourceException {
    if (begins(look, 'P', 'K', 3, 4)) {
      throw new SourceException(
          file + " is a workbook or zip archive, not text. Save the sheet as CSV UTF-8 first.");
    }
    if (begins(look, 0xD0, 0xCF, 0x11, 0xE0)) {
      throw new SourceException(
          file + " is an old workbook, not text. Save the sheet as CSV UTF-8 first.");
    }
    if (begins(look, 0x1F, 0x8B)) {
      throw new SourceException(file + " is compressed. Unpack it first.");
    }
  }

  private static void refuseUnmarkedUtf16(Path file, byte[] look) throws SourceException {
    int zeros = 0;
    int evenZeros = 0;
    for (int i = 0; i < look.length; i++) {
      if (look[i] == 0) {
        zeros++;
        evenZeros += i % 2 == 0 ? 1 : 0;
      }
    }
    if (zeros == 0) {
      return;
    }
    if (zeros > look.length / 4) {
      String guess = evenZeros > zeros / 2 ? "UTF-16BE" : "UTF-16LE";
      throw new SourceException(
          file
              + " looks like "
              + guess
              + " without a byte-order mark. Try --encoding "
              + guess
              + ".");
    }
    throw new SourceException(
        file + " has zero bytes and is no text file. Export it as CSV or JSON Lines.");
  }

  private static boolean begins(byte[] look, int... bytes) {
    for (int i = 0; i < bytes.length; i++) {
      if (i >= look.length || (look[i] & 0xFF) != bytes[i]) {
        return false;
      }
    }
    return true;
  }

  private static int markLength(byte[] look) {
    if (begins(look, 0xEF, 0xBB, 0xBF)) {
      return 3;
    }
    return begins(look, 0xFF, 0xFE) || begins(look, 0xFE, 0xFF) ? 2 : 0;
  }

  private static Charset marked(byte[] look) {
    if (begins(look, 0xEF, 0xBB, 0xBF)) {
      return StandardCharsets.UTF_8;
    }
    if (begins(look, 0xFF, 0xFE)) {
      return StandardCharsets.UTF_16LE;
    }
    return begins(look, 0xFE, 0xFF) ? StandardCharsets.UTF_16BE : null;
  }

  /** Whether the first character that is no blank is this one; nothing is read past. */
  boolean beginsWith(char first) throws IOException {
    bytes.mark(LOOK_BYTES);
    int next = bytes.read();
    for (int i = 1; i < LOOK_BYTES && next >= 0 && next <= ' '; i++) {
      next = bytes.read();
    }
    bytes.reset();
    return next == first;
  }

  /** The bytes of the text, without a byte-order mark. */
  InputStream bytes() {
    return bytes;
  }

  /** The encoding of {@link #bytes()}; a line end is a single byte in it. */
  Charset charset() {
    return charset;
  }

  long readBytes() {
    return counted.count;
  }

  long totalBytes() {
    return totalBytes;
  }

  @Override
  public void close() throws IOException {
    bytes.close();
  }

  /** Counts the bytes that have been read of a file. */
  private static final class Counted extends java.io.FilterInputStream {
    private long count;

    Counted(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      int next = super.read();
      count += next < 0 ? 0 : 1;
      return next;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
      int read = super.read(into, from, length);
      count += Math.max(0, read);
      return read;
    }
  }
}
