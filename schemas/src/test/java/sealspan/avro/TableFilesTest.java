package sealspan.avro;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.apache.avro.Schema;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sealspan.table.AssemblyRows;
import sealspan.table.FitRows;
import sealspan.table.FoulingRows;
import sealspan.table.WatchRows;

class TableFilesTest {
  private static final Path SCHEMAS = Path.of("src/main/resources/avro/table");

  static Stream<Class<? extends Record>> types() {
    return TableCodec.TYPES.stream();
  }

  /** To accept a change of a record, run this test with -Dapprove=true and review the diff. */
  @ParameterizedTest
  @MethodSource("types")
  void committedSchemaIsThatOfTheRecord(Class<? extends Record> type) throws IOException {
    Path file = SCHEMAS.resolve(type.getSimpleName() + ".avsc");
    Schema schema = TableCodec.schemaOf(type);
    if (Boolean.getBoolean("approve")) {
      Files.createDirectories(SCHEMAS);
      Files.writeString(file, schema.toString(true) + "\n");
    }
    assertEquals(Files.readString(file), schema.toString(true) + "\n");
  }

  @Test
  void bundlesComeBackAsTheyWereWritten() {
    for (long seed = 0; seed < 20; seed++) {
      AssemblyRows rows = new AnyRecord(seed, 0.2).of(AssemblyRows.class);
      assertEquals(rows, TableCodec.decode(TableCodec.encode(rows), AssemblyRows.class));
      FitRows fit = new AnyRecord(seed, 0.2).of(FitRows.class);
      assertEquals(fit, TableCodec.decode(TableCodec.encode(fit), FitRows.class));
      FoulingRows fouling = new AnyRecord(seed, 0.2).of(FoulingRows.class);
      assertEquals(fouling, TableCodec.decode(TableCodec.encode(fouling), FoulingRows.class));
      WatchRows watch = new AnyRecord(seed, 0.2).of(WatchRows.class);
      assertEquals(watch, TableCodec.decode(TableCodec.encode(watch), WatchRows.class));
    }
  }
}
