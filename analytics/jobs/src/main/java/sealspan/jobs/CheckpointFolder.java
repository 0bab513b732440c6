package sealspan.jobs;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import org.apache.flink.core.fs.FileStatus;
import org.apache.flink.core.fs.FileSystem;
import org.apache.flink.core.fs.Path;

/**
 * The checkpoints of the continuous job. State is disposable: only what the same version of the
 * program wrote, for the same generation and the same criteria, is resumed from; the rest goes.
 */
final class CheckpointFolder {
  private static final String STATE = "state-";
  private static final String CHECKPOINT = "chk-";

  private final Path folder;
  private final Path own;

  CheckpointFolder(CheckpointSettings checkpoints, JobSettings job) {
    this.folder = new Path(checkpoints.folder());
    this.own = new Path(folder, STATE + stamp(job));
  }

  /** URI of the folder that the job writes to. */
  String uri() {
    return own.toUri().toString();
  }

  /** The newest completed checkpoint; empty to begin from the first event. */
  Optional<String> newest() {
    try {
      FileSystem files = own.getFileSystem();
      Path newest = null;
      for (FileStatus file : list(files, own)) {
        Path path = file.getPath();
        boolean completed =
            path.getName().matches(CHECKPOINT + "[0-9]{1,18}")
                && files.exists(new Path(path, "_metadata"));
        if (completed && (newest == null || number(path) > number(newest))) {
          newest = path;
        }
      }
      return Optional.ofNullable(newest).map(p -> p.toUri().toString());
    } catch (IOException e) {
      throw cannotUse(e);
    }
  }

  /** Deletes what cannot be resumed from. */
  void deleteForeign() {
    delete(false);
  }

  /** Deletes every checkpoint, to begin from the first event. */
  void deleteAll() {
    delete(true);
  }

  private void delete(boolean all) {
    try {
      FileSystem files = folder.getFileSystem();
      for (FileStatus file : list(files, folder)) {
        Path path = file.getPath();
        if (path.getName().startsWith(STATE) && (all || !path.getName().equals(own.getName()))) {
          files.delete(path, true);
        }
      }
    } catch (IOException e) {
      throw cannotUse(e);
    }
  }

  private JobException cannotUse(IOException e) {
    return new JobException(
        "The folder of checkpoints %s cannot be read or written: %s. Check its rights and the space"
                .formatted(folder, e.getMessage())
            + " left, or choose another.",
        e);
  }

  private static FileStatus[] list(FileSystem files, Path folder) throws IOException {
    try {
      FileStatus[] listed = files.listStatus(folder);
      return listed == null ? new FileStatus[0] : listed;
    } catch (FileNotFoundException e) {
      return new FileStatus[0];
    }
  }

  private static long number(Path checkpoint) {
    return Long.parseLong(checkpoint.getName().substring(CHECKPOINT.length()));
  }

  private static String stamp(JobSettings job) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (String part : new String[] {job.generation(), job.codeVersion(), job.criteria().csv()}) {
        digest.update(part.getBytes(UTF_8));
        digest.update((byte) 0);
      }
      return HexFormat.of().formatHex(digest.digest(), 0, 8);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }
}
