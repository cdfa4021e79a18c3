package traytally.cli;

import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import traytally.intake.ListRefusedException;
import traytally.sheet.UnreadableSheetException;
import traytally.store.BoxException;

/** The program below {@code main}: arguments in, an exit code out. */
public final class Program {
  private final Desk desk;

  Program(Desk desk) {
    this.desk = desk;
  }

  /** Runs one command. */
  public int run(String... args) {
    Traytally root = new Traytally(desk);
    CommandLine commandLine = new CommandLine(root);
    Commands.register(commandLine, args);
    commandLine.setOut(writer(desk.out()));
    commandLine.setErr(writer(desk.err()));
    commandLine.setCaseInsensitiveEnumValuesAllowed(true);
    commandLine.setUsageHelpAutoWidth(false);
    commandLine.setParameterExceptionHandler(misuse());
    commandLine.setExecutionExceptionHandler(failure(root));
    Converter.register(commandLine);
    try {
      return commandLine.execute(args);
    } catch (OutOfMemoryError e) {
      desk.err()
          .println(
              "traytally: this box and this command want more memory than Java was given. Give it"
                  + " more: JAVA_TOOL_OPTIONS=-Xmx2g");
      return Exit.FAULT;
    }
  }

  private static PrintWriter writer(java.io.PrintStream stream) {
    return new PrintWriter(stream, true, StandardCharsets.UTF_8);
  }

  private IParameterExceptionHandler misuse() {
    return (ParameterException e, String[] args) -> {
      CommandLine command = e.getCommandLine();
      desk.err().println("traytally: " + words(e));
      desk.err().println("Try: " + command.getCommandSpec().qualifiedName() + " --help");
      return Exit.USAGE;
    };
  }

  private static String words(ParameterException e) {
    if (e instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
      String word = unmatched.getUnmatched().get(0);
      List<String> near = unmatched.getSuggestions();
      return "\""
          + word
          + "\" is not understood here."
          + (near.isEmpty() ? "" : " Did you mean " + near.get(0) + "?");
    }
    return String.valueOf(e.getMessage());
  }

  private IExecutionExceptionHandler failure(Traytally root) {
    return (Exception e, CommandLine command, CommandLine.ParseResult parsed) -> {
      if (root.debug()) {
        e.printStackTrace(desk.err());
      }
      desk.err().println("traytally: " + sentence(e));
      return code(e);
    };
  }

  private static int code(Exception e) {
    if (e instanceof Refusal refusal) {
      return refusal.code();
    }
    if (e instanceof UnreadableSheetException || e instanceof ListRefusedException) {
      return Exit.DATA;
    }
    if (e instanceof BoxException box) {
      return switch (box.kind()) {
        case BUSY -> Exit.BUSY;
        case CANNOT_CREATE -> Exit.CANNOT_CREATE;
        case NOT_A_BOX, TOO_NEW -> Exit.DATA;
        case IO -> Exit.IO;
      };
    }
    return files(e)
        .map(file -> file instanceof NoSuchFileException ? Exit.NO_INPUT : Exit.IO)
        .orElse(Exit.FAULT);
  }

  private static String sentence(Exception e) {
    if (e instanceof Refusal
        || e instanceof UnreadableSheetException
        || e instanceof ListRefusedException
        || e instanceof BoxException) {
      return String.valueOf(e.getMessage());
    }
    Optional<FileSystemException> file = files(e);
    if (file.isPresent()) {
      return file.get() instanceof NoSuchFileException
          ? "there is no file " + file.get().getFile() + "."
          : "cannot read or write " + file.get().getMessage() + ".";
    }
    return "a fault of the program itself, not yours: "
        + e
        + ". Nothing was recorded; --debug shows where.";
  }

  private static Optional<FileSystemException> files(Exception e) {
    Throwable cause = e instanceof UncheckedIOException unchecked ? unchecked.getCause() : e;
    return cause instanceof FileSystemException file ? Optional.of(file) : Optional.empty();
  }
}
