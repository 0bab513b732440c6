package sealspan.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;
import sealspan.answers.AnswersException;
import sealspan.app.Problem;
import sealspan.ingest.log.LogException;
import sealspan.jobs.JobException;

/** Turns what went wrong into words for people; what only a developer can read goes to a file. */
final class Complaints {
  private Complaints() {}

  /** Says on the error stream why a command failed. */
  static int say(Exception e, CommandLine line, ParseResult parsed) {
    PrintWriter err = line.getErr();
    if (isForPeople(e)) {
      err.println(e.getMessage());
    } else {
      sayUnexpected(e, err);
    }
    err.flush();
    return ExitCode.FAILED;
  }

  /** Says that something failed which nobody foresaw, and where a developer can read what. */
  static void sayUnexpected(Throwable e, PrintWriter err) {
    err.println("Something went wrong that the program did not expect: " + e);
    err.println(whereToRead(e));
    err.flush();
  }

  /** Whether the message of an exception is written for people. */
  static boolean isForPeople(Throwable e) {
    return e instanceof Problem
        || e instanceof LogException
        || e instanceof JobException
        || e instanceof AnswersException;
  }

  private static String whereToRead(Throwable e) {
    StringWriter trace = new StringWriter();
    e.printStackTrace(new PrintWriter(trace));
    try {
      Path file = Files.createTempFile("sealspan-error-", ".txt");
      Files.writeString(file, Instant.now() + System.lineSeparator() + trace);
      return "The details are in " + file + ". Please report them to the project.";
    } catch (IOException io) {
      return "The details could not be written to a file (" + io.getMessage() + ").";
    }
  }
}
