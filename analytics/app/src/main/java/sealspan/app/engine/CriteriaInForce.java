package sealspan.app.engine;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import sealspan.app.Problem;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.CriteriaException;

/** The criteria table that a data folder judges by: the user's own, or the shipped one. */
public final class CriteriaInForce {
  private static final int DIGITS = 16;

  private CriteriaInForce() {}

  /**
   * The criteria in force.
   *
   * @throws Problem when the user's own table cannot be read
   */
  public static AcceptanceCriteria of(DataFolder folder) {
    return Files.exists(folder.criteria()) ? read(folder.criteria()) : AcceptanceCriteria.shipped();
  }

  /**
   * Reads a table from a file.
   *
   * @throws Problem when it is not there or not well formed; names line and column
   */
  public static AcceptanceCriteria read(Path file) {
    try {
      return new AcceptanceCriteria(Files.readString(file));
    } catch (NoSuchFileException e) {
      throw new Problem("There is no file " + file + ".", e);
    } catch (CriteriaException e) {
      throw new Problem(file + ": " + e.getMessage(), e);
    } catch (IOException e) {
      throw new Problem(file + " cannot be read as UTF-8 text (" + e.getMessage() + ").", e);
    }
  }

  /** Puts a table in force from the engine's next start on. */
  public static void put(DataFolder folder, AcceptanceCriteria criteria) {
    try {
      Files.createDirectories(folder.root());
      Path draft = folder.criteria().resolveSibling("criteria.csv.new");
      Files.writeString(draft, criteria.csv());
      Files.move(
          draft,
          folder.criteria(),
          StandardCopyOption.REPLACE_EXISTING,
          StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new Problem(folder.criteria() + " cannot be written (" + e.getMessage() + ").", e);
    }
  }

  /** Tells two tables apart: the first 16 hex digits of the SHA-256 of the text. */
  static String digest(AcceptanceCriteria criteria) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256")
              .digest(criteria.csv().getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash).substring(0, DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }
}
