package traytally.cli;

import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import traytally.store.Part;

/** The program as a process. */
final class Main {
  private Main() {}

  public static void main(String[] args) {
    waitApart();
    // Words are UTF-8 wherever they go; what a terminal's locale says only spoils names.
    PrintStream out = stream(FileDescriptor.out);
    PrintStream err = stream(FileDescriptor.err);
    Desk desk =
        new Desk(
            System.in,
            out,
            err,
            Clock.system(ZoneId.systemDefault()),
            System.getenv(),
            isTerminal());
    int code = new Program(desk).run(args);
    out.flush();
    err.flush();
    // A pipe that closed early, or a full disk behind it, must not pass for success.
    System.exit(out.checkError() && code == 0 ? Exit.IO : code);
  }

  /**
   * Lets files that wait (SQLite's own code, a workbook's rows) lie in a folder of this process's
   * own, within the system's for temporary files. What a killed process left there goes now.
   */
  private static void waitApart() {
    try {
      Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
      Part folder = Part.folderBeside(temporary.resolve("traytally"));
      System.setProperty("java.io.tmpdir", folder.path().toString());
      Runtime.getRuntime().addShutdownHook(new Thread(() -> leave(folder)));
    } catch (IOException e) {
      // Who needs the folder will say what is wrong with it; most commands do not.
    }
  }

  private static void leave(Part folder) {
    try {
      folder.close();
    } catch (IOException e) {
      // A system that deletes no code in use: the next start sweeps it away.
    }
  }

  /**
   * Whether a person sees it: from Java 22 on there is a console even where there is no terminal.
   */
  @SuppressWarnings("SystemConsoleNull")
  private static boolean isTerminal() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException beforeJava22) {
      return true;
    }
  }

  private static PrintStream stream(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), false, StandardCharsets.UTF_8);
  }
}
