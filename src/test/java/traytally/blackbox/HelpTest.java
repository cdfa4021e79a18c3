package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import traytally.cli.Ran;

/** Every command and every command below it explains itself. */
class HelpTest {
  private static final Pattern COMMAND = Pattern.compile("(?m)^  ([a-z]+)  ");

  private static int explained(List<String> path) {
    List<String> args = new ArrayList<>(path);
    args.add("--help");
    Ran ran = Ran.with(Map.of(), args.toArray(String[]::new));
    assertEquals(0, ran.code(), path + ran.err());
    assertEquals("", ran.err());
    String help = ran.out();
    assertTrue(help.lines().allMatch(line -> line.codePointCount(0, line.length()) <= 100), help);
    assertTrue(
        path.isEmpty() || help.contains("Example: traytally " + path.get(0)), path + "\n" + help);
    int all = 1;
    int commands = help.indexOf("Commands:");
    if (commands >= 0) {
      Matcher below = COMMAND.matcher(help.substring(commands));
      while (below.find()) {
        List<String> longer = new ArrayList<>(path);
        longer.add(below.group(1));
        all += explained(longer);
      }
    }
    return all;
  }

  @Test
  void everyCommandHasHelpWithAnExampleOfItsOwn() {
    assertTrue(explained(List.of()) > 30);
  }
}
