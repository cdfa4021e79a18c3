package traytally;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the table of packages and what each may import. */
class ArchitectureTest {
  private static final String BASE = "java.lang.. java.util.. java.time.. java.math.. java.text..";
  private static final String FILES = "java.io.. java.nio..";
  private static final String POI = "org.apache.poi.. org.openxmlformats.. com.microsoft.schemas..";
  private static final String NUMBERS =
      "org.ejml.. org.apache.commons.statistics.. org.apache.commons.numbers..";

  /** What each package may import beside the base and itself: packages of ours, then others'. */
  private static final Map<String, String> MAY_IMPORT =
      Map.ofEntries(
          Map.entry("plastic", ""),
          Map.entry("trip", "plastic"),
          Map.entry("ledger", "plastic trip"),
          Map.entry("numeric", NUMBERS),
          Map.entry("performance", "plastic trip numeric"),
          Map.entry("restock", "plastic trip ledger performance numeric"),
          Map.entry(
              "sheet", FILES + " javax.xml.stream.. com.fasterxml.aalto.. com.opencsv.. " + POI),
          Map.entry("intake", "java.io.. java.nio.charset.. sheet plastic trip ledger"),
          Map.entry("store", FILES + " java.sql.. org.sqlite.. plastic trip ledger"),
          Map.entry(
              "export", FILES + " com.opencsv.. com.fasterxml.jackson.core.. store render sheet"),
          Map.entry("report", "plastic trip ledger performance restock intake"),
          Map.entry(
              "render",
              FILES
                  + " com.opencsv.. com.fasterxml.jackson.core.. com.openhtmltopdf.."
                  + " org.apache.pdfbox.. org.apache.fontbox.. plastic report sheet "
                  + POI),
          Map.entry(
              "cli",
              FILES
                  + " picocli.. org.jline.. plastic trip ledger performance restock sheet intake store report export"
                  + " render"));

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("traytally");

  static Stream<String> packages() {
    return MAY_IMPORT.keySet().stream().sorted();
  }

  @ParameterizedTest
  @MethodSource("packages")
  void eachPackageDependsOnlyOnItsRow(String name) {
    String[] allowed =
        Stream.of(BASE, "traytally." + name, MAY_IMPORT.getOrDefault(name, ""))
            .flatMap(row -> Stream.of(row.split(" ")))
            .filter(word -> !word.isEmpty())
            .map(word -> MAY_IMPORT.containsKey(word) ? "traytally." + word : word)
            .toArray(String[]::new);
    classes()
        .that()
        .resideInAPackage("traytally." + name)
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(allowed)
        .check(CLASSES);
  }

  @Test
  void everyPackageFoundIsInTheTable() {
    Set<String> found =
        CLASSES.stream()
            .map(JavaClass::getPackageName)
            .map(name -> name.replace("traytally.", ""))
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(new TreeSet<>(MAY_IMPORT.keySet()), found);
  }

  @Test
  void packagesHaveNoCycles() {
    slices().matching("traytally.(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void everyPackageSaysWhatComesInAndGoesOut() {
    for (String name : MAY_IMPORT.keySet()) {
      assertTrue(
          java.nio.file.Files.exists(
              java.nio.file.Path.of("src/main/java/traytally", name, "package-info.java")),
          name);
    }
  }
}
