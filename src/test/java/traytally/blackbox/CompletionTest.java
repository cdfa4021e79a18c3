package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** The completion script, run by the shell it is for. */
class CompletionTest {
  @TempDir Path folder;
  private Path script = Path.of("");

  @BeforeEach
  void writeTheScript() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "no bash here: completion is not tried");
    Ran ran = Ran.with(Map.of(), "completion");
    assertEquals(0, ran.code(), ran.err());
    script = Files.writeString(folder.resolve("completion"), ran.out());
  }

  /** What bash offers after these words, the last of them being typed. */
  private Set<String> offered(String... words) throws IOException {
    String line = String.join(" ", words);
    String ask =
        "source '%s'; COMP_WORDS=(%s ''); COMP_CWORD=%d; COMP_LINE='%s'; COMP_POINT=%d;"
                .formatted(script, line, words.length - 1, line, line.length())
            + " unset 'COMP_WORDS[-1]'; _complete_traytally 2> /dev/null;"
            + " printf '%s\\n' \"${COMPREPLY[@]}\"";
    Process bash =
        new ProcessBuilder(List.of("/bin/bash", "--norc", "-c", ask))
            .redirectErrorStream(true)
            .start();
    String said = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    Set<String> offered = new TreeSet<>();
    said.lines().map(String::strip).filter(word -> !word.isEmpty()).forEach(offered::add);
    return offered;
  }

  /** What zsh is handed there, which it narrows itself to what begins with the last word. */
  private String offeredByZsh(String... words) throws IOException {
    String line = String.join(" ", words);
    String ask =
        "source '%s' 2> /dev/null; ask() { emulate -L sh; setopt kshglob noshglob braceexpand;"
                .formatted(script)
            + " COMP_WORDS=(%s); COMP_CWORD=%d; COMP_LINE='%s'; COMP_POINT=%d;"
                .formatted(line, words.length - 1, line, line.length())
            + " _complete_traytally; echo \"${COMPREPLY[@]}\"; }; ask";
    ProcessBuilder zsh =
        new ProcessBuilder(List.of("/bin/zsh", "-f", "-c", ask)).redirectErrorStream(true);
    zsh.environment().put("HOME", folder.toString());
    return new String(zsh.start().getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
  }

  @Test
  void zshCompletesThemToo() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/bin/zsh")), "no zsh here: completion is not tried");
    assertTrue(offeredByZsh("traytally", "rest").contains(" restock "));
    assertEquals("list add drop closed", offeredByZsh("traytally", "plan", "cl"));
    assertEquals(
        "trusted promising unproven doubtful", offeredByZsh("traytally", "box", "--standing", "t"));
    assertEquals(
        "table csv json xlsx html pdf", offeredByZsh("traytally", "restock", "--format", "j"));
  }

  @Test
  void commandsAreCompleted() throws IOException {
    assertEquals(Set.of("restock", "restore"), offered("traytally", "rest"));
    assertEquals(Set.of("closed"), offered("traytally", "plan", "cl"));
    assertEquals(Set.of("log"), offered("traytally", "trips", "l"));
  }

  @Test
  void optionsAndTheirWordsAreCompleted() throws IOException {
    assertTrue(offered("traytally", "box", "--").contains("--standing"));
    assertTrue(offered("traytally", "box", "--standing", "t").contains("trusted"));
    assertTrue(offered("traytally", "trust", "--by", "l").contains("landed"));
    assertTrue(offered("traytally", "restock", "--format", "j").contains("json"));
  }
}
