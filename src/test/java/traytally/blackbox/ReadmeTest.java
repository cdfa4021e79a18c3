package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** What README.md shows is what the program does. */
class ReadmeTest {
  private static final Path README = Path.of("README.md");
  private static final Pattern CONSOLE = Pattern.compile("```console\n(.*?)```", Pattern.DOTALL);
  private static final String DEMO = "mvn -q -Pdemo package";

  /** A command of a console block and what is shown below it. */
  private record Shown(String command, String output) {}

  private static List<Shown> shown() throws IOException {
    List<Shown> shown = new ArrayList<>();
    Matcher blocks = CONSOLE.matcher(Files.readString(README));
    while (blocks.find()) {
      for (String part : blocks.group(1).split("(?m)^\\$ ", -1)) {
        if (!part.isBlank()) {
          int end = part.indexOf('\n');
          shown.add(new Shown(part.substring(0, end), part.substring(end + 1).strip()));
        }
      }
    }
    return shown;
  }

  @Test
  void everyOutputShownIsWhatTheCommandPrints() throws IOException {
    List<Shown> shown = shown();
    assertEquals(4, shown.size(), shown.toString());
    for (Shown example : shown) {
      if (example.command().equals("mvn verify")) {
        assertEquals("", example.output());
        continue;
      }
      String words =
          example.command().equals(DEMO) ? "traytally demo target/demo" : example.command();
      String[] args = words.split(" ", -1);
      assertEquals("traytally", args[0], words);
      Ran ran = Ran.with(Map.of(), Arrays.copyOfRange(args, 1, args.length));
      assertEquals(0, ran.code(), ran.err());
      assertEquals(example.output(), (ran.out() + ran.err()).strip(), example.command());
    }
  }

  @Test
  void theMinuteWithYourOwnSpreadsheetRuns(@TempDir Path folder) throws IOException {
    Path demo = Path.of("demo-data");
    Files.copy(demo.resolve("tray.xlsx"), folder.resolve("my-tray.xlsx"));
    Files.copy(demo.resolve("trips.xlsx"), folder.resolve("my-trips.xlsx"));
    Files.writeString(
        folder.resolve("shop-prices.csv"),
        """
        Shop,Body style,Colour,Length (mm),Pack size,Pack price
        Far Skerry Post,paddle tail,motor oil,75,8,4.85
        """);
    Files.writeString(folder.resolve("plan.csv"), "Date,Hours\n2026-05-09,5\n");
    Matcher block =
        Pattern.compile("```sh\n(.*?)```", Pattern.DOTALL).matcher(Files.readString(README));
    assertTrue(block.find());
    int commands = 0;
    for (String line : block.group(1).split("\n", -1)) {
      String command = line.replaceAll("#.*", "").strip();
      if (command.startsWith("traytally ")) {
        String[] args = command.substring("traytally ".length()).split(" +", -1);
        for (int i = 0; i < args.length; i++) {
          args[i] = args[i].contains(".") ? folder.resolve(args[i]).toString() : args[i];
        }
        Ran ran = Ran.in(folder, args);
        assertEquals(0, ran.code(), command + ran.err());
        commands++;
      }
    }
    assertEquals(7, commands);
    assertTrue(Files.exists(folder.resolve("list.pdf")));
    assertTrue(Files.exists(folder.resolve("list.html")));
  }

  @Test
  void theDemoCommandRunsTheDemo() throws IOException {
    String pom = Files.readString(Path.of("pom.xml"));
    String profile = pom.substring(pom.indexOf("<id>demo</id>"));
    assertTrue(
        profile
            .substring(0, profile.indexOf("</profile>"))
            .replaceAll("\\s+", "")
            .contains("<argument>demo</argument><argument>target/demo</argument>"));
  }

  @Test
  void theTableHasEveryCommandAndNoOther() throws IOException {
    Set<String> told = new TreeSet<>();
    Matcher rows = Pattern.compile("(?m)^\\| (`.*?) \\|").matcher(Files.readString(README));
    while (rows.find()) {
      for (String cell : rows.group(1).split("`, `", -1)) {
        told.add(cell.replace("`", "").split(" ", -1)[0]);
      }
    }
    told.remove("traytally");
    Set<String> there = new TreeSet<>();
    String help = Ran.with(Map.of(), "--help").out();
    Matcher commands =
        Pattern.compile("(?m)^  ([a-z]+)  ").matcher(help.substring(help.indexOf("Commands:")));
    while (commands.find()) {
      there.add(commands.group(1));
    }
    assertFalse(there.isEmpty());
    assertEquals(there, told);
  }

  @Test
  void everyLinkLeadsSomewhere() throws IOException {
    List<Path> pages = new ArrayList<>(List.of(README, Path.of("DEVELOPERS.md")));
    try (var docs = Files.list(Path.of("docs"))) {
      docs.filter(page -> page.toString().endsWith(".md")).forEach(pages::add);
    }
    for (Path page : pages) {
      Matcher links = Pattern.compile("]\\(([^)#:]+)(#[^)]*)?\\)").matcher(Files.readString(page));
      while (links.find()) {
        Path target = page.resolveSibling(links.group(1));
        assertTrue(Files.exists(target), page + " links to " + target);
      }
    }
  }

  @Test
  void everyCommandHasHelpWithAnExample() {
    String help = Ran.with(Map.of(), "--help").out();
    Matcher commands =
        Pattern.compile("(?m)^  ([a-z]+)  ").matcher(help.substring(help.indexOf("Commands:")));
    while (commands.find()) {
      Ran ran = Ran.with(Map.of(), commands.group(1), "--help");
      assertEquals(0, ran.code());
      assertTrue(
          ran.out().contains("Example: traytally ") || ran.out().contains("Commands:"), ran.out());
      assertEquals("", ran.err());
    }
  }
}
