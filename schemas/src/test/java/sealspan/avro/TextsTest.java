package sealspan.avro;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.avro.io.BinaryEncoder;
import org.apache.avro.io.Decoder;
import org.apache.avro.io.DecoderFactory;
import org.apache.avro.io.EncoderFactory;
import org.junit.jupiter.api.Test;

class TextsTest {
  @Test
  void readsEveryTextAsTheDecoderAloneDoes() throws IOException {
    SplittableRandom random = new SplittableRandom(20261128);
    List<String> texts =
        new ArrayList<>(List.of("", "a", "\u00e9", "\u00e9a", "\ud83d\udca7", "a".repeat(64)));
    for (int i = 0; i < 20_000; i++) {
      int[] codes = random.ints(random.nextInt(0, 90), 1, i % 3 == 0 ? 0x2000 : 128).toArray();
      texts.add(new String(codes, 0, codes.length));
    }
    texts.addAll(texts.subList(0, 10_000));
    Decoder plain = decoder(texts);
    Decoder ours = decoder(texts);
    for (String text : texts) {
      assertEquals(text, plain.readString());
      assertEquals(text, Texts.read(ours));
    }
  }

  @Test
  void whatComesAgainIsTheSameObject() throws IOException {
    Decoder in = decoder(List.of("FOULING", "check1", "FOULING"));
    String first = Texts.read(in);
    Texts.read(in);
    assertSame(first, Texts.read(in));
  }

  @Test
  void threadsDoNotDisturbOneAnother() {
    List<String> texts = IntStream.range(0, 50_000).mapToObj(i -> "text " + i % 20_000).toList();
    long right =
        IntStream.range(0, 8)
            .parallel()
            .mapToLong(
                thread -> {
                  try {
                    Decoder in = decoder(texts);
                    long same = 0;
                    for (String text : texts) {
                      same += text.equals(Texts.read(in)) ? 1 : 0;
                    }
                    return same;
                  } catch (IOException e) {
                    throw new IllegalStateException(e);
                  }
                })
            .sum();
    assertEquals(8L * texts.size(), right);
  }

  private static Decoder decoder(List<String> texts) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    BinaryEncoder out = EncoderFactory.get().binaryEncoder(bytes, null);
    for (String text : texts) {
      out.writeString(text);
    }
    out.flush();
    return DecoderFactory.get().binaryDecoder(bytes.toByteArray(), null);
  }
}
