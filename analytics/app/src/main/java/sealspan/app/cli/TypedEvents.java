package sealspan.app.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import sealspan.app.Problem;
import sealspan.event.LoggedEvent;
import sealspan.ingest.source.DraftSource;
import sealspan.ingest.source.Item;
import sealspan.ingest.source.Mapping;
import sealspan.ingest.source.SourceException;
import sealspan.ingest.source.Sources;
import sealspan.ingest.source.StationZones;
import sealspan.ingest.validate.Intake;
import sealspan.ingest.validate.Validation;
import sealspan.ingest.validate.Validator;

/**
 * Events from one JSON object whose members are named as the columns of a table: the same reading
 * and the same rules as for imported rows.
 */
final class TypedEvents {
  private static final ObjectMapper JSON = new ObjectMapper();

  private TypedEvents() {}

  /**
   * Reads the object that a file holds, over as many lines as it likes.
   *
   * @throws Problem when there is no such file, or it holds no object
   */
  static ObjectNode read(Path file) {
    try {
      if (JSON.readTree(Files.readString(file)) instanceof ObjectNode object) {
        return object;
      }
      throw new Problem(file + " holds no JSON object. It begins with { and ends with }.");
    } catch (NoSuchFileException e) {
      throw new Problem("There is no file " + file + ". Check the path.", e);
    } catch (CharacterCodingException e) {
      throw new Problem(file + " is not in UTF-8. Save it in that encoding.", e);
    } catch (JsonProcessingException e) {
      throw new Problem(
          file
              + ", line "
              + (e.getLocation() == null ? 1 : e.getLocation().getLineNr())
              + ": this is not JSON: "
              + e.getOriginalMessage(),
          e);
    } catch (IOException e) {
      throw new Problem(file + " cannot be read (" + e.getMessage() + ").", e);
    }
  }

  /** An empty object. */
  static ObjectNode empty() {
    return JSON.createObjectNode();
  }

  /**
   * The events that an object tells of, or all that is wrong with it.
   *
   * @param source name of the source, part of the key of numbered reports
   * @param arrival whether it is taken in as it happens or with history
   * @throws Problem when it cannot even be read
   */
  static Validation judged(ObjectNode object, String source, LoggedEvent.Arrival arrival) {
    try {
      Path line = Files.createTempFile("sealspan-", ".jsonl");
      try {
        Files.writeString(line, JSON.writeValueAsString(object) + "\n");
        try (DraftSource drafts = Sources.open(line, Mapping.NONE, StationZones.NONE)) {
          Item item = drafts.next();
          if (item instanceof Item.Draft draft) {
            Intake intake = new Intake(source, LocalDate.now(), null, arrival);
            return new Validator(intake).validate(draft.draft());
          }
          return new Validation.Rejected(List.of(((Item.Broken) item).problem()));
        }
      } finally {
        Files.delete(line);
      }
    } catch (SourceException e) {
      throw new Problem(e.getMessage(), e);
    } catch (IOException e) {
      throw new Problem("A scratch file could not be written (" + e.getMessage() + ").", e);
    }
  }

  /** Writes an object over several lines, so that a person can mend it. */
  static void write(ObjectNode object, Path file) {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      Files.writeString(
          file, JSON.writerWithDefaultPrettyPrinter().writeValueAsString(object) + "\n");
    } catch (IOException e) {
      throw new Problem(file + " cannot be written (" + e.getMessage() + ").", e);
    }
  }
}
