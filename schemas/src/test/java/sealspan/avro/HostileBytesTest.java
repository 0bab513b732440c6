package sealspan.avro;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.avro.SingleObjectCodec.DamagedBytes;
import sealspan.event.AssemblyEvent;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

/** Damaged and invented bytes, from a fixed seed: each is read, or named as damaged. */
@Timeout(value = 30, unit = TimeUnit.MINUTES)
class HostileBytesTest {
  private static final int RECORDS = Boolean.getBoolean("sealspan.deep") ? 1_000_000 : 20_000;
  private static final int FILES = Boolean.getBoolean("sealspan.deep") ? 20_000 : 300;

  @TempDir Path folder;

  @Test
  void everyRecordIsReadOrNamedAsDamaged() {
    Random random = new Random(61);
    List<byte[]> sound = sound();
    int damaged = 0;
    for (int i = 0; i < RECORDS; i++) {
      byte[] bytes = hurt(sound.get(random.nextInt(sound.size())), random);
      damaged += isDamaged(bytes, i) ? 1 : 0;
    }
    assertTrue(damaged > RECORDS / 10, damaged + " of " + RECORDS);
    assertTrue(damaged < RECORDS, "a changed letter is no damage");
  }

  private static boolean isDamaged(byte[] bytes, int number) {
    try {
      EventCodec.decode(bytes);
      return false;
    } catch (DamagedBytes e) {
      assertTrue(e.getMessage().length() > 20, e.getMessage());
      try {
        TableCodec.decode(bytes, LedgerEntry.class);
        return false;
      } catch (DamagedBytes | ClassCastException other) {
        return true;
      }
    } catch (RuntimeException | Error e) {
      return fail("record " + number + ": " + Arrays.toString(bytes), e);
    }
  }

  private static List<byte[]> sound() {
    List<byte[]> sound = new ArrayList<>();
    AnyRecord any = new AnyRecord(62, .3);
    for (Class<?> type : AssemblyEvent.class.getPermittedSubclasses()) {
      for (int i = 0; i < 5; i++) {
        sound.add(EventCodec.encode((AssemblyEvent) any.of(type)));
      }
    }
    sound.add(TableCodec.encode(any.of(LedgerEntry.class)));
    sound.add(TableCodec.encode(any.of(QuarantinedRow.class)));
    return sound;
  }

  @Test
  void everyContainerFileIsReadOrNamedAsDamaged() throws IOException {
    Random random = new Random(63);
    Path file = folder.resolve("sound.avro");
    try (ArchiveFile.Writer writer = new ArchiveFile.Writer(file)) {
      for (int i = 0; i < 40; i++) {
        byte[] value = sound().get(i);
        writer.append(
            new ArchivedRecord(
                0, i, i, value, value, List.of(new ArchivedRecord.Header("h", value))));
      }
    }
    byte[] sound = Files.readAllBytes(file);
    Path hurt = folder.resolve("hurt.avro");
    int damaged = 0;
    for (int i = 0; i < FILES; i++) {
      Files.write(hurt, hurt(sound, random));
      try {
        ArchiveFile.read(hurt, r -> assertTrue(r.headers().size() >= 0));
      } catch (DamagedBytes | IOException e) {
        damaged++;
      } catch (RuntimeException | Error e) {
        fail("file " + i, e);
      }
    }
    assertTrue(damaged > FILES / 4, damaged + " of " + FILES);
  }

  /** Some bytes changed, cut off, put in, or all made up. */
  static byte[] hurt(byte[] sound, Random random) {
    switch (random.nextInt(5)) {
      case 0:
        return Arrays.copyOf(sound, random.nextInt(sound.length));
      case 1:
        byte[] made = new byte[random.nextInt(200)];
        random.nextBytes(made);
        System.arraycopy(sound, 0, made, 0, Math.min(made.length, 10));
        return made;
      case 2:
        byte[] longer = Arrays.copyOf(sound, sound.length + 1 + random.nextInt(20));
        int at = random.nextInt(sound.length);
        System.arraycopy(sound, at, longer, at + longer.length - sound.length, sound.length - at);
        return longer;
      default:
        byte[] changed = sound.clone();
        for (int i = 0; i <= random.nextInt(4); i++) {
          changed[random.nextInt(changed.length)] =
              random.nextBoolean() ? (byte) 0xFF : (byte) random.nextInt(256);
        }
        return changed;
    }
  }
}
