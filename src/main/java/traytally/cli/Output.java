package traytally.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Option;
import traytally.render.Format;
import traytally.render.Look;
import traytally.render.Rendering;
import traytally.report.Report;
import traytally.store.Part;

/** Where a result goes and in what form: the options that every reading command shares. */
final class Output {
  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "table, csv, json, xlsx, html or pdf; else what the ending of --out says.")
  private Optional<Format> format = Optional.empty();

  @Option(names = "--out", paramLabel = "FILE", description = "Write to this file.")
  private Optional<Path> out = Optional.empty();

  /** Writes {@code report} as the options say. */
  void print(Traytally root, Report report) {
    Format form = form();
    Look look = Looks.of(root.desk(), root.settings());
    if (out.isPresent()) {
      deliver(
          root.desk(),
          out.get(),
          stream -> Rendering.write(report, form, look.withColour(false), stream));
      return;
    }
    if (!form.isText()) {
      throw new Refusal(
          Exit.USAGE,
          "a file of this kind needs a name: add --out "
              + report.command()
              + "."
              + form.extension());
    }
    try {
      Rendering.write(report, form, look, root.desk().out());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether a person reads the result at once: a table, and not in a file. */
  boolean isForPeople() {
    return form() == Format.TABLE && out.isEmpty();
  }

  private Format form() {
    return format.or(() -> out.map(Output::fromEnding)).orElse(Format.TABLE);
  }

  private static Format fromEnding(Path file) {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    String ending = name.substring(name.lastIndexOf('.') + 1);
    return Arrays.stream(Format.values())
        .filter(form -> form.extension().equals(ending))
        .findFirst()
        .orElseThrow(
            () ->
                new Refusal(
                    Exit.USAGE,
                    file
                        + ": a result is written as .txt, .csv, .json, .xlsx, .html or .pdf, or as"
                        + " --format says."));
  }

  /** Writes what was asked for to a file, and says so. */
  static void deliver(Desk desk, Path file, Part.Content content) {
    desk.apart().run();
    save(file, content);
    desk.err().println("Written: " + file);
  }

  /** Writes a file whole or not at all. */
  static void save(Path file, Part.Content content) {
    try {
      Part.write(file, content);
    } catch (IOException e) {
      throw new Refusal(
          Exit.CANNOT_CREATE,
          "cannot write " + file + ". Is there such a folder, may you write to it, is it full?",
          e);
    }
  }
}
