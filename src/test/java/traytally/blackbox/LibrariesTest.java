package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * docs/libraries.md lists what the program carries, no more and no less; NOTICE names all of it.
 */
class LibrariesTest {
  private static final Pattern ROW =
      Pattern.compile(
          "(?m)^\\| ([\\w.-]+) \\| ([\\d.]+) \\| ([\\d,]+) \\| ([^|]+) \\| ([^|]+) \\|$");

  /** Licences by their SPDX names that go with that of this program. */
  private static final List<String> LICENCES =
      List.of("Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "LGPL-2.1-or-later");

  /** How NOTICE calls a family of libraries; any other is called by the first word of its name. */
  private static final Map<String, String> FAMILIES =
      Map.ofEntries(
          Map.entry("commons-math3", "Math"),
          Map.entry("commons-io", "IO"),
          Map.entry("ejml", "EJML"),
          Map.entry("jackson-core", "Jackson core"),
          Map.entry("aalto", "Aalto XML"),
          Map.entry("stax2", "StAX2 API"),
          Map.entry("sqlite", "SQLite JDBC"),
          Map.entry("log4j", "Log4j API"),
          Map.entry("curvesapi", "CurvesAPI"),
          Map.entry("graphics2d", "PDFBox Graphics2D"));

  /** The jars that Maven resolved for the running program, by name and version. */
  private static Map<String, Path> carried() throws IOException {
    Map<String, Path> jars = new TreeMap<>();
    String all = Files.readString(Path.of("target/carried.txt")).strip();
    for (String entry : all.split(File.pathSeparator, -1)) {
      String name = Path.of(entry).getFileName().toString();
      jars.put(name.substring(0, name.length() - ".jar".length()), Path.of(entry));
    }
    return jars;
  }

  @Test
  void everyLibraryCarriedIsListedWithItsVersionSizeLicenceAndReason() throws IOException {
    Map<String, Path> carried = carried();
    assertTrue(carried.size() > 30, carried.toString());
    TreeSet<String> listed = new TreeSet<>();
    Matcher rows = ROW.matcher(Files.readString(Path.of("docs/libraries.md")));
    while (rows.find()) {
      String name = rows.group(1) + "-" + rows.group(2);
      listed.add(name);
      assertTrue(carried.containsKey(name), name + " is listed and not carried");
      double kilobytes = Files.size(carried.get(name)) / 1024.0;
      assertEquals(kilobytes, Integer.parseInt(rows.group(3).replace(",", "")), 1, "KB of " + name);
      for (String licence : rows.group(4).split(", ", -1)) {
        assertTrue(LICENCES.contains(licence), name + " is under " + licence);
      }
      assertFalse(rows.group(5).isBlank(), name + " has no reason");
    }
    assertEquals(new TreeSet<>(carried.keySet()), listed);
  }

  @Test
  void noticeNamesEveryLibraryCarried() throws IOException {
    String notice = Files.readString(Path.of("NOTICE"));
    for (String jar : carried().keySet()) {
      String called =
          FAMILIES.entrySet().stream()
              .filter(family -> jar.startsWith(family.getKey()))
              .map(Map.Entry::getValue)
              .findFirst()
              .orElseGet(() -> firstWord(jar));
      assertTrue(
          notice.toLowerCase(Locale.ROOT).contains(called.toLowerCase(Locale.ROOT)),
          jar + ": NOTICE does not name " + called);
    }
  }

  /** Commons libraries are told apart by their second word. */
  private static String firstWord(String jar) {
    String[] words = jar.split("[-\\d.]+", -1);
    return Arrays.asList(words).get(words[0].equals("commons") ? 1 : 0);
  }
}
