package traytally.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * docs/traytally.1 is what the commands say of themselves; {@code -Dgolden.update=true} writes it.
 */
class ManPageTest {
  private static final Path PAGE = Path.of("docs/traytally.1");

  private static final String HEAD =
      """
      .TH TRAYTALLY 1 "" traytally "User Commands"
      .SH NAME
      traytally \\- keeps count of your soft plastics and prints what to buy
      .SH SYNOPSIS
      .B traytally
      .RI [ COMMAND ]
      .RI [ OPTION ...]
      .SH DESCRIPTION
      Without a command: the box at a glance. A plastic is named by its row in the last listing, or
      by words of its name in any order.
      """;

  private static final String TAIL =
      """
      .SH "EXIT STATUS"
      0 done; 1 done, but something needs attention and you asked to be told; 2 wrong usage; 65 input
      refused; 66 input missing; 70 a fault of the program; 73 cannot create output; 74 I/O error; 75
      box busy, try again.
      .SH ENVIRONMENT
      .TP
      .B TRAYTALLY_BOX
      The box to use where \\-\\-box does not say.
      .TP
      .B NO_COLOR
      Set to anything: no bold, no dim.
      .TP
      .B COLUMNS
      How wide tables may be.
      .SH CAUTIONS
      Seasons, licences, bag limits and bans on lures or lead are local and change: ask the authority
      for the water. Take used plastics home.
      """;

  private static CommandLine commands() {
    PrintStream nowhere =
        new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
    Desk desk =
        new Desk(
            InputStream.nullInputStream(),
            nowhere,
            nowhere,
            Clock.systemUTC(),
            Map.of(),
            false,
            () -> {});
    CommandLine root = new CommandLine(new Traytally(desk));
    Commands.registerAll(root);
    return root;
  }

  @Test
  void thePageIsWhatTheCommandsSayOfThemselves() throws IOException {
    CommandLine root = commands();
    StringBuilder page = new StringBuilder(HEAD);
    page.append(".SH OPTIONS\n");
    options(root.getCommandSpec(), true, page);
    page.append(".SH COMMANDS\n");
    root.getSubcommands().forEach((name, command) -> command(name, command, page));
    page.append(TAIL);
    if (Boolean.getBoolean("golden.update")) {
      Files.writeString(PAGE, page);
    }
    assertEquals(Files.readString(PAGE), page.toString());
    for (String name : root.getSubcommands().keySet()) {
      assertTrue(page.toString().contains(".SS " + name + "\n"), name);
    }
  }

  private static void command(String name, CommandLine command, StringBuilder page) {
    CommandSpec spec = command.getCommandSpec();
    page.append(".SS ").append(name).append('\n');
    lines(List.of(spec.usageMessage().description()), page);
    for (PositionalParamSpec parameter : spec.positionalParameters()) {
      page.append(".TP\n.I ").append(roff(parameter.paramLabel())).append('\n');
      lines(List.of(parameter.description()), page);
    }
    options(spec, false, page);
    for (String line : spec.usageMessage().footer()) {
      if (!line.isBlank()) {
        page.append(".PP\n").append(roff(line)).append('\n');
      }
    }
    command.getSubcommands().forEach((own, below) -> command(name + " " + own, below, page));
  }

  /** The options of a command; those that every command inherits are told once, at the top. */
  private static void options(CommandSpec spec, boolean inherited, StringBuilder page) {
    for (OptionSpec option : spec.options()) {
      if (!option.hidden() && !option.inherited() && (inherited || !isShared(option))) {
        String value = option.arity().max() > 0 ? " " + option.paramLabel() : "";
        page.append(".TP\n.B ")
            .append(roff(String.join(", ", option.names()) + value))
            .append('\n');
        lines(List.of(option.description()), page);
      }
    }
  }

  private static boolean isShared(OptionSpec option) {
    return option.usageHelp() || option.versionHelp();
  }

  private static void lines(List<String> lines, StringBuilder page) {
    for (String line : lines) {
      String set = line.startsWith(" ") ? ".br\n" + roff(line.strip()) : roff(line);
      page.append(line.isBlank() ? ".PP" : set).append('\n');
    }
  }

  /** Text as roff takes it: no dash is turned, and no line begins with a request. */
  private static String roff(String text) {
    String escaped = text.replace("\\", "\\e").replace("-", "\\-");
    return escaped.startsWith(".") || escaped.startsWith("'") ? "\\&" + escaped : escaped;
  }
}
