package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** The guide says what the program says: its console blocks are run and compared. */
class CommandGuideTest {
  private static final Path GUIDE = Path.of("docs/commands.md");
  private static final Pattern COMMAND =
      Pattern.compile("\\$ (?:printf '([^']*)' \\| )?traytally (.*)");
  private static final Pattern WORD = Pattern.compile("'([^']*)'|(\\S+)");

  /** The file of the guide that is written, and so lies in a folder of the test. */
  private static final String KEPT = "list.csv";

  @TempDir Path folder;

  @Test
  void everyBlockShowsWhatTheCommandsPrint() throws IOException {
    StringBuilder real = new StringBuilder();
    boolean console = false;
    int commands = 0;
    for (String line : Files.readAllLines(GUIDE)) {
      if (line.startsWith("```")) {
        console = line.equals("```console");
      }
      if (!console || line.startsWith("```")) {
        real.append(line).append('\n');
      } else if (COMMAND.matcher(line).matches()) {
        Ran ran = run(line);
        real.append(line).append('\n').append(asIfThere(ran.out())).append(asIfThere(ran.err()));
        commands++;
      }
    }
    if (Boolean.getBoolean("golden.update")) {
      Files.writeString(GUIDE, real);
    }
    assertEquals(Files.readString(GUIDE), real.toString());
    assertEquals(26, commands);
  }

  private Ran run(String line) {
    Matcher command = COMMAND.matcher(line);
    if (!command.matches()) {
      throw new IllegalArgumentException(line);
    }
    String piped = Optional.ofNullable(command.group(1)).orElse("").replace("\\n", "\n");
    String[] words = words(command.group(2));
    for (int i = 0; i < words.length; i++) {
      words[i] = words[i].equals(KEPT) ? folder.resolve(KEPT).toString() : words[i];
    }
    return Ran.piping(folder, piped, words);
  }

  /** The guide speaks as if the folder of the test were the one the reader is in. */
  private String asIfThere(String said) {
    return said.replace(folder.resolve(KEPT).toString(), KEPT);
  }

  private static String[] words(String line) {
    List<String> words = new ArrayList<>();
    Matcher word = WORD.matcher(line);
    while (word.find()) {
      words.add(word.group(1) == null ? word.group(2) : word.group(1));
    }
    return words.toArray(String[]::new);
  }
}
