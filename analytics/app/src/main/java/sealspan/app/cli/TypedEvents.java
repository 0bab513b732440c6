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
import sealspan.ingest.source.Item;
import sealspan.ingest.source.VisitDraft;
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
   */
  static Validation judged(ObjectNode object, String source, LoggedEvent.Arrival arrival) {
    Item item = VisitDraft.ofJson(source, object.toString());
    if (item instanceof Item.Draft draft) {
      Intake intake = new Intake(source, LocalDate.now(), null, arrival);
      return new Validator(intake).validate(draft.draft());
    }
    return new Validation.Rejected(List.of(((Item.Broken) item).problem()));
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
