package sealspan.avro;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.avro.Schema;

/** The schemas that earlier versions wrote logs with, so that an old log opens for ever. */
final class PastSchemas {
  private PastSchemas() {}

  /** The past schemas of a family, which the file {@code index} of its folder names, one a line. */
  static List<Schema> of(String family) {
    String folder = "/avro/" + family + "/past/";
    List<Schema> schemas = new ArrayList<>();
    try (BufferedReader index =
        new BufferedReader(
            new InputStreamReader(resource(folder + "index"), StandardCharsets.UTF_8))) {
      for (String name = index.readLine(); name != null; name = index.readLine()) {
        if (!name.isBlank()) {
          try (InputStream file = resource(folder + name.trim())) {
            schemas.add(new Schema.Parser().parse(file));
          }
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return schemas;
  }

  private static InputStream resource(String name) throws IOException {
    InputStream in = PastSchemas.class.getResourceAsStream(name);
    if (in == null) {
      throw new IOException("The program's own file " + name + " is missing.");
    }
    return in;
  }
}
