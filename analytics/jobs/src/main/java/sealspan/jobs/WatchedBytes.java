package sealspan.jobs;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.study.watch.WatchedOutcome;
import sealspan.study.watch.WatchedTest;

/**
 * The watched tests of an assembly as bytes, between operators and in state; no other use.
 *
 * @param events number of events of its history, which only grows
 * @param tests its tests
 */
record WatchedBytes(long events, List<WatchedTest> tests) {
  byte[] pack() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.writeLong(events);
      out.writeInt(tests.size());
      for (WatchedTest test : tests) {
        out.writeLong(test.knownAt().getEpochSecond());
        out.writeInt(test.knownAt().getNano());
        writeText(test.assemblyId(), out);
        writeText(test.eventId(), out);
        write(test.asKnown(), out);
        write(test.standing(), out);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static void write(WatchedOutcome outcome, DataOutputStream out) throws IOException {
    out.writeBoolean(outcome != null);
    if (outcome != null) {
      out.writeLong(outcome.day().toEpochDay());
      writeText(outcome.place(), out);
      writeText(outcome.zoneId(), out);
      writeText(outcome.type(), out);
      out.writeInt(outcome.exposureDays());
      out.writeBoolean(outcome.fouled());
    }
  }

  private static void writeText(String text, DataOutputStream out) throws IOException {
    byte[] bytes = text == null ? null : text.getBytes(UTF_8);
    out.writeInt(bytes == null ? -1 : bytes.length);
    if (bytes != null) {
      out.write(bytes);
    }
  }

  static WatchedBytes unpack(byte[] bytes) {
    try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
      long events = in.readLong();
      int size = in.readInt();
      List<WatchedTest> tests = new ArrayList<>(size);
      for (int i = 0; i < size; i++) {
        tests.add(
            new WatchedTest(
                Instant.ofEpochSecond(in.readLong(), in.readInt()),
                readText(in),
                readText(in),
                read(in),
                read(in)));
      }
      return new WatchedBytes(events, tests);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static WatchedOutcome read(DataInputStream in) throws IOException {
    if (!in.readBoolean()) {
      return null;
    }
    return new WatchedOutcome(
        LocalDate.ofEpochDay(in.readLong()),
        readText(in),
        readText(in),
        readText(in),
        in.readInt(),
        in.readBoolean());
  }

  private static String readText(DataInputStream in) throws IOException {
    int length = in.readInt();
    return length < 0 ? null : new String(in.readNBytes(length), UTF_8);
  }
}
