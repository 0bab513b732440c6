package sealspan.answers.freesql;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import sealspan.answers.ResultTable.ResultColumn;

/** How rows travel from the process of a query to its parent. */
final class ResultFrames {
  /** What comes next. */
  enum Frame {
    HEAD,
    ROW,
    END,
    TROUBLE
  }

  private ResultFrames() {}

  static void writeHead(DataOutputStream out, String asOf, List<ResultColumn> columns)
      throws IOException {
    out.writeByte(Frame.HEAD.ordinal());
    writeText(out, asOf);
    out.writeInt(columns.size());
    for (ResultColumn column : columns) {
      writeText(out, column.name());
      writeText(out, column.sqlType());
    }
  }

  static List<ResultColumn> readColumns(DataInputStream in) throws IOException {
    int count = in.readInt();
    List<ResultColumn> columns = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      String name = readText(in);
      columns.add(new ResultColumn(name, readText(in)));
    }
    return columns;
  }

  static void writeTrouble(DataOutputStream out, String message) throws IOException {
    out.writeByte(Frame.TROUBLE.ordinal());
    writeText(out, message);
  }

  static void writeValue(DataOutputStream out, Object value) throws IOException {
    if (value == null) {
      out.writeByte('-');
    } else if (value instanceof Boolean flag) {
      out.writeByte('b');
      out.writeBoolean(flag);
    } else if (value instanceof Integer || value instanceof Short || value instanceof Byte) {
      out.writeByte('i');
      out.writeInt(((Number) value).intValue());
    } else if (value instanceof Long number) {
      out.writeByte('l');
      out.writeLong(number);
    } else if (value instanceof Double || value instanceof Float) {
      out.writeByte('d');
      out.writeDouble(((Number) value).doubleValue());
    } else if (value instanceof LocalDate day) {
      out.writeByte('y');
      out.writeLong(day.toEpochDay());
    } else if (value instanceof LocalDateTime time) {
      out.writeByte('t');
      writeText(out, time.toString());
    } else if (value instanceof BigDecimal || value instanceof BigInteger) {
      out.writeByte('n');
      writeText(out, value.toString());
    } else {
      out.writeByte('s');
      writeText(out, value.toString());
    }
  }

  static Object readValue(DataInputStream in) throws IOException {
    return switch (in.readByte()) {
      case '-' -> null;
      case 'b' -> in.readBoolean();
      case 'i' -> in.readInt();
      case 'l' -> in.readLong();
      case 'd' -> in.readDouble();
      case 'y' -> LocalDate.ofEpochDay(in.readLong());
      case 't' -> LocalDateTime.parse(readText(in));
      case 'n' -> new BigDecimal(readText(in));
      case 's' -> readText(in);
      default -> throw new IOException("the process of the query sent something unknown");
    };
  }

  private static void writeText(DataOutputStream out, String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    out.writeInt(bytes.length);
    out.write(bytes);
  }

  static String readText(DataInputStream in) throws IOException {
    return new String(in.readNBytes(in.readInt()), StandardCharsets.UTF_8);
  }
}
