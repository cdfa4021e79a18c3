package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** docs/libraries.md lists what the program carries, no more and no less. */
class LibrariesTest {
  private static final Pattern FOR_TESTS_ONLY =
      Pattern.compile(
          "(junit|archunit|opentest4j|apiguardian|slf4j|surefire|common-|jmh|jopt|jazzer|json-schema-validator|itu|ojalgo|jackson-databind|jackson-annotations"
              + "|jackson-dataformat|jackson-core-3|snakeyaml).*");

  @Test
  void everyLibraryOnTheClassPathIsListedWithItsVersion() throws IOException {
    Set<String> carried =
        Arrays.stream(
                System.getProperty(
                        "surefire.test.class.path", System.getProperty("java.class.path"))
                    .split(File.pathSeparator, -1))
            .map(entry -> Path.of(entry).getFileName().toString())
            .filter(name -> name.endsWith(".jar") && !FOR_TESTS_ONLY.matcher(name).matches())
            .map(name -> name.substring(0, name.length() - ".jar".length()))
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> listed = new TreeSet<>();
    Matcher rows =
        Pattern.compile("(?m)^\\| ([\\w.-]+) \\| ([\\d.]+) \\|")
            .matcher(Files.readString(Path.of("docs/libraries.md")));
    while (rows.find()) {
      listed.add(rows.group(1) + "-" + rows.group(2));
    }
    assertEquals(carried, listed);
  }
}
