package traytally.export;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import traytally.store.Box;
import traytally.store.TableSource;

/** A box that was written as text, to be read back. */
public interface Export extends TableSource {
  /** What the first line of an export says it is. */
  String SCHEMA = "traytally/export/1";

  /** The version of the tables it holds. */
  int version() throws IOException;

  /** The export at {@code path}, if one lies there. */
  static Optional<Export> at(Path path) throws IOException {
    if (Files.isDirectory(path)) {
      return Files.isRegularFile(path.resolve(ExportFolder.ABOUT))
          ? Optional.of(new ExportFolder(path))
          : Optional.empty();
    }
    return isJson(path) && Files.isRegularFile(path) && ExportFile.marks(path)
        ? Optional.of(new ExportFile(path))
        : Optional.empty();
  }

  /** Whether a path of that name is written as one JSON file, and not as a folder. */
  static boolean isJson(Path path) {
    return path.toString().toLowerCase(Locale.ROOT).endsWith(".json");
  }

  /** Writes all of {@code box} to {@code path}, which is not there yet. */
  static void write(Box box, Path path) throws IOException {
    if (isJson(path)) {
      ExportFile.write(box, path);
    } else {
      ExportFolder.write(box, path);
    }
  }
}
