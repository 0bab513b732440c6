package sealspan.jobs;

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
        out.writeUTF(test.assemblyId());
        out.writeUTF(test.eventId());
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
      out.writeUTF(outcome.place());
      writeText(outcome.zoneId(), out);
      writeText(outcome.type(), out);
      out.writeInt(outcome.exposureDays());
      out.writeBoolean(outcome.fouled());
    }
  }

  private static void writeText(String text, DataOutputStream out) throws IOException {
    out.writeBoolean(text != null);
    if (text != null) {
      out.writeUTF(text);
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
                in.readUTF(),
                in.readUTF(),
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
        in.readUTF(),
        readText(in),
        readText(in),
        in.readInt(),
        in.readBoolean());
  }

  private static String readText(DataInputStream in) throws IOException {
    return in.readBoolean() ? in.readUTF() : null;
  }
}
