package traytally.cli;

import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** The program as a process. */
final class Main {
  private Main() {}

  public static void main(String[] args) {
    // Words are UTF-8 wherever they go; what a terminal's locale says only spoils names.
    PrintStream out = stream(FileDescriptor.out);
    PrintStream err = stream(FileDescriptor.err);
    Desk desk =
        new Desk(
            System.in, out, err, new SystemClock(), System.getenv(), isTerminal(), Apart::ready);
    int code = new Program(desk).run(args);
    out.flush();
    err.flush();
    // A pipe that closed early, or a full disk behind it, must not pass for success.
    System.exit(out.checkError() && code == 0 ? Exit.IO : code);
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
