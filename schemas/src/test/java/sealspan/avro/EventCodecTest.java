package sealspan.avro;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.apache.avro.Schema;
import org.apache.avro.SchemaNormalization;
import org.apache.avro.SchemaValidatorBuilder;
import org.apache.avro.message.BinaryMessageEncoder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sealspan.assembly.References;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyRemoved;
import sealspan.event.Moment;

class EventCodecTest {
  private static final Path SCHEMAS = Path.of("src/main/resources/avro/event");
  private static final Path FROZEN = Path.of("src/test/resources/frozen");

  static Stream<Class<? extends AssemblyEvent>> types() {
    return Arrays.stream(AssemblyEvent.class.getPermittedSubclasses())
        .map(type -> type.asSubclass(AssemblyEvent.class));
  }

  /** Events of chance, a third of them whole and the others with fields missing. */
  private static List<? extends AssemblyEvent> some(Class<? extends AssemblyEvent> type) {
    return LongStream.range(0, 50)
        .mapToObj(seed -> new AnyRecord(seed, seed % 3 * 0.4).of(type))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("types")
  void everyEventComesBackAsItWasWritten(Class<? extends AssemblyEvent> type) {
    for (AssemblyEvent event : some(type)) {
      AssemblyEvent back = EventCodec.decode(EventCodec.encode(event));
      assertEquals(event, back);
      assertArrayEquals(EventCodec.digest(event), EventCodec.digest(back));
    }
  }

  /** Texts, one of which may be missing although none should. */
  public record Names(String title, List<String> names) {}

  @Test
  void writingThatBrokeOffLeavesNothingBehind() {
    SingleObjectCodec codec = new SingleObjectCodec(List.of(Names.class), List.of(), Set.of());
    Names whole = new Names("whole", List.of("a"));
    byte[] before = codec.encode(whole);
    Names broken = new Names("x".repeat(300), Arrays.asList("b", null));
    for (int i = 0; i < 5; i++) {
      assertThrows(NullPointerException.class, () -> codec.encode(broken));
      assertArrayEquals(before, codec.encode(whole));
    }
    assertEquals(whole, codec.decode(before));
  }

  @ParameterizedTest
  @MethodSource("types")
  void aGlanceSeesWhomAnEventIsAboutAndRefersTo(Class<? extends AssemblyEvent> type) {
    for (AssemblyEvent event : some(type)) {
      AssemblyEvent glanced = EventCodec.glance(EventCodec.encode(event));
      assertEquals(type, glanced.getClass());
      assertEquals(event.when(), glanced.when());
      assertEquals(told(event::subject), told(glanced::subject));
      assertEquals(told(() -> References.of(event)), told(() -> References.of(glanced)));
    }
  }

  /** What something gives, or why it gives nothing: what is of chance may be blank or missing. */
  private static Object told(Supplier<?> asked) {
    try {
      return asked.get();
    } catch (IllegalArgumentException | NullPointerException e) {
      return e.getMessage();
    }
  }

  @Test
  void aGlanceLeavesTheRestOut() {
    AssemblyRemoved event = (AssemblyRemoved) new AnyRecord(1, 0).of(AssemblyRemoved.class);
    AssemblyRemoved glanced = (AssemblyRemoved) EventCodec.glance(EventCodec.encode(event));
    assertNotNull(event.remarks());
    assertNull(glanced.remarks());
  }

  /** To accept a change of a record, run this test with -Dapprove=true and review the diff. */
  @ParameterizedTest
  @MethodSource("types")
  void committedSchemaIsThatOfTheRecord(Class<? extends AssemblyEvent> type) throws IOException {
    Path file = SCHEMAS.resolve(type.getSimpleName() + ".avsc");
    String now = EventCodec.schemaOf(type).toString(true) + "\n";
    if (Boolean.getBoolean("approve")) {
      Files.writeString(file, now);
    }
    assertEquals(Files.readString(file), now);
  }

  @ParameterizedTest
  @MethodSource("types")
  void everyPastSchemaCanStillBeRead(Class<? extends AssemblyEvent> type) throws Exception {
    Schema now = EventCodec.schemaOf(type);
    List<Schema> past =
        PastSchemas.of("event").stream()
            .filter(s -> s.getFullName().equals(now.getFullName()))
            .toList();
    new SchemaValidatorBuilder().canReadStrategy().validateAll().validate(now, past);
    assertTrue(past.stream().allMatch(s -> s.getFullName().equals(now.getFullName())));
  }

  /** Bytes once written to a log decode for ever; a new version adds files and changes none. */
  @ParameterizedTest
  @MethodSource("types")
  void frozenBytesDecode(Class<? extends AssemblyEvent> type) throws IOException {
    Path first = FROZEN.resolve("v1").resolve(type.getSimpleName() + ".bin");
    AssemblyEvent full = new AnyRecord(1, 0).of(type);
    if (Boolean.getBoolean("approve") && !Files.exists(first)) {
      Files.createDirectories(first.getParent());
      Files.write(first, EventCodec.encode(full));
      Files.writeString(FROZEN.resolve("v1").resolve(type.getSimpleName() + ".txt"), full + "\n");
    }
    try (Stream<Path> files = Files.walk(FROZEN)) {
      List<Path> bins =
          files
              .filter(f -> f.getFileName().toString().equals(type.getSimpleName() + ".bin"))
              .toList();
      assertFalse(bins.isEmpty());
      for (Path bin : bins) {
        String text = bin.toString().replace(".bin", ".txt");
        assertEquals(
            Files.readString(Path.of(text)), EventCodec.decode(Files.readAllBytes(bin)) + "\n");
      }
    }
  }

  /** Outside check: Avro's own single-object encoder gives the same header (Avro 1.12.2). */
  @Test
  void headerIsThatOfAvrosOwnEncoder() {
    AssemblyEvent event = new AnyRecord(3, 0.2).of(AssemblyRemoved.class);
    Schema schema = EventCodec.schemaOf(AssemblyRemoved.class);
    byte[] bytes = EventCodec.encode(event);
    long fingerprint = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getLong(2);
    assertEquals(SchemaNormalization.parsingFingerprint64(schema), fingerprint);
    try {
      var generic =
          new org.apache.avro.generic.GenericDatumReader<org.apache.avro.generic.GenericRecord>(
                  schema)
              .read(
                  null,
                  org.apache.avro.io.DecoderFactory.get()
                      .binaryDecoder(bytes, 10, bytes.length - 10, null));
      ByteBuffer own =
          new BinaryMessageEncoder<org.apache.avro.generic.GenericRecord>(
                  org.apache.avro.generic.GenericData.get(), schema)
              .encode(generic);
      assertEquals(own, ByteBuffer.wrap(bytes));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void damagedBytesAreSaidToBeDamaged() {
    AssemblyEvent event = new AnyRecord(5, 0).of(AssemblyRemoved.class);
    byte[] bytes = EventCodec.encode(event);
    Random random = new Random(7);
    int refused = 0;
    for (int i = 0; i < 2_000; i++) {
      byte[] damaged = Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
      for (int flips = random.nextInt(3); damaged.length > 0 && flips >= 0; flips--) {
        damaged[random.nextInt(damaged.length)] ^= (byte) (1 + random.nextInt(255));
      }
      try {
        EventCodec.decode(damaged);
      } catch (SingleObjectCodec.DamagedBytes e) {
        refused++;
      }
    }
    assertTrue(refused > 1_000, "only " + refused + " of 2000 were refused");
  }

  @Test
  void digestLeavesOutWhatWasNotRecorded() {
    AssemblyRemoved sparse =
        new AssemblyRemoved("A-1", Moment.on(java.time.LocalDate.of(2020, 1, 2)), null, null);
    AssemblyRemoved other =
        new AssemblyRemoved("A-1", Moment.on(java.time.LocalDate.of(2020, 1, 2)), null, "gone");
    StringBuilder text = new StringBuilder();
    RecordShape.of(AssemblyRemoved.class).text(sparse, text);
    assertEquals(
        "AssemblyRemoved{assemblyId=3:A-1;when=Moment{day=10:2020-01-02;};}", text.toString());
    assertThrows(
        AssertionError.class,
        () -> assertArrayEquals(EventCodec.digest(sparse), EventCodec.digest(other)));
  }
}
