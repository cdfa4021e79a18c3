package traytally.cli;

import java.io.IOException;
import java.nio.file.Path;
import traytally.store.Part;

/**
 * A folder of this process's own, within the system's for temporary files, for files that wait: a
 * workbook's rows, SQLite's own code. What a killed process left there goes when the next one needs
 * it. Most commands do not, and do not pay for it.
 */
final class Apart {
  private static final String FOLDER = "java.io.tmpdir";

  private static boolean ready;

  private Apart() {}

  /** Makes it, unless it is there. */
  static synchronized void ready() {
    if (ready) {
      return;
    }
    ready = true;
    try {
      Path temporary = Path.of(System.getProperty(FOLDER));
      Part folder = Part.folderBeside(temporary.resolve("traytally"));
      System.setProperty(FOLDER, folder.path().toString());
      Runtime.getRuntime().addShutdownHook(new Thread(() -> leave(folder)));
    } catch (IOException e) {
      // Who needs the folder will say what is wrong with it.
    }
  }

  private static void leave(Part folder) {
    try {
      folder.close();
    } catch (IOException e) {
      // A system that deletes no code in use: the next one sweeps it away.
    }
  }
}
