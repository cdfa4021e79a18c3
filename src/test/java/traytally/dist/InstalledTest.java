package traytally.dist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/**
 * The archive of the profile {@code dist}, installed under a path with blanks and letters beyond
 * ASCII by somebody with no Java and hardly any environment.
 */
class InstalledTest {
  private static final String NOBODY = "65534";

  /** The address of a library (package-url.github.io). */
  private static final Pattern LIBRARY =
      Pattern.compile("\"purl\"\\s*:\\s*\"pkg:maven/[^/\"]+/([^@\"]+)@([^?\"]+)");

  @TempDir(cleanup = CleanupMode.NEVER)
  Path folder;

  private Path home;
  private Path program;

  @BeforeEach
  void install() throws IOException, InterruptedException {
    String dist = System.getProperty("dist", "");
    assumeTrue(!dist.isEmpty(), "skipped: built and tested by mvn -Pdist verify -DskipTests");
    home = Files.createDirectory(folder.resolve("Köder ☂ of Jo"));
    for (Path open : List.of(folder, home)) {
      Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rwxrwxrwx"));
    }
    Path archive;
    try (Stream<Path> files = Files.list(Path.of(dist))) {
      archive = files.filter(f -> f.toString().endsWith(".tar.gz")).findFirst().orElseThrow();
    }
    run("tar", "xzf", archive.toString(), "-C", home.toString());
    String said = run(home.resolve("traytally/install").toString(), home + "/soft ware");
    assertTrue(said.startsWith("Installed: "), said);
    program = home.resolve("soft ware/bin/traytally");
  }

  @AfterEach
  void remove() throws IOException, InterruptedException {
    if (program != null) {
      run("rm", "-rf", home.toString());
    }
  }

  @Test
  void theMainJobRunsWithoutJava() throws IOException, InterruptedException {
    assertTrue(run(program.toString(), "--version").startsWith("traytally "));
    String demo = run(program.toString(), "demo", home + "/demo");
    assertTrue(demo.contains("Total "), demo);
    assertTrue(Files.size(home.resolve("demo/shopping-list.pdf")) > 1000);
    String box = home + "/tray.box";
    run(program.toString(), "--box", box, "import", home + "/demo/tray.xlsx");
    String listed = run(program.toString(), "--box", box, "box", "--format", "json");
    assertTrue(listed.contains("\"pieces\""), listed);
    assertEquals("", run("find", home + "/tmp", "-type", "f"), "left in the temporary folder");
  }

  /** Started once, the classes made ready serve; a warning would spoil every output. */
  @Test
  void classesAreReadyAndNothingIsSaidOfIt() throws IOException, InterruptedException {
    assertTrue(Files.exists(home.resolve("soft ware/lib/traytally/app/classes.jsa")));
    assertFalse(run(program.toString(), "--version").contains("["));
    assertTrue(
        Files.size(home.resolve("soft ware/share/bash-completion/completions/traytally")) > 0);
  }

  /** The list of materials (CycloneDX) in the archive names each library in it, and no other. */
  @Test
  void theMaterialsAreThoseThatCome() throws IOException {
    Path unpacked = home.resolve("traytally");
    Set<String> named =
        LIBRARY
            .matcher(Files.readString(unpacked.resolve("materials.json")))
            .results()
            .map(library -> library.group(1) + "-" + library.group(2) + ".jar")
            .collect(Collectors.toCollection(TreeSet::new));
    named.removeIf(name -> name.startsWith("traytally-"));
    try (Stream<Path> files = Files.list(unpacked.resolve("app/lib"))) {
      assertEquals(
          named,
          files
              .map(f -> f.getFileName().toString())
              .collect(Collectors.toCollection(TreeSet::new)));
    }
  }

  /** Runs a command as nobody where this is root, and returns all it said. */
  private String run(String... command) throws IOException, InterruptedException {
    List<String> words = new ArrayList<>();
    if (System.getProperty("user.name").equals("root")) {
      words.addAll(
          List.of("setpriv", "--reuid", NOBODY, "--regid", NOBODY, "--clear-groups", "--"));
    }
    words.addAll(List.of(command));
    ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
    Path scratch = Files.createDirectories(home.resolve("tmp"));
    Files.setPosixFilePermissions(scratch, PosixFilePermissions.fromString("rwxrwxrwx"));
    builder.environment().clear();
    builder.environment().put("PATH", "/usr/bin:/bin");
    builder.environment().put("HOME", home.toString());
    builder.environment().put("TMPDIR", scratch.toString());
    builder.environment().put("JAVA_HOME", "/nowhere");
    Process process = builder.start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(5, TimeUnit.MINUTES), "does not end: " + words);
    assertEquals(0, process.exitValue(), words + "\n" + said);
    return said;
  }
}
