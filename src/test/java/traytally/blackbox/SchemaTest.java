package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** Every JSON output is as its schema in docs/schemas says (JSON Schema 2020-12). */
class SchemaTest {
  private static final Path SCHEMAS = Path.of("docs/schemas");

  private static final List<String> COMMANDS =
      List.of(
          "",
          "box",
          "trips",
          "plan",
          "plan closed",
          "trust",
          "trust plastic",
          "trust body --by landed",
          "restock",
          "restock --budget 20",
          "restock --try 2",
          "ledger",
          "ledger --batches",
          "settings",
          "agree",
          "lineup",
          "lineup --for pollack --in cloudy --hours 3",
          "guide",
          "colours",
          "idle",
          "audit");

  private final SchemaRegistry registry =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
  private final Set<String> checked = new TreeSet<>();

  @TempDir Path folder;

  private void check(String... args) throws IOException {
    List<String> all = new ArrayList<>(Arrays.asList(args));
    all.removeIf(String::isEmpty);
    String command = String.join(" ", all);
    all.addAll(List.of("--format", "json"));
    Ran ran = Ran.in(folder, all.toArray(String[]::new));
    assertTrue(ran.out().startsWith("{"), command + ": " + ran.err());
    Matcher name = Pattern.compile("\"schema\": \"traytally/([\\w-]+)/1\"").matcher(ran.out());
    assertTrue(name.find(), command);
    assertEquals(List.of(), faults(name.group(1), ran.out()), command);
    checked.add(name.group(1));
  }

  private List<String> faults(String name, String json) throws IOException {
    Schema schema =
        registry.getSchema(
            Files.readString(SCHEMAS.resolve(name + ".schema.json")), InputFormat.JSON);
    return schema.validate(json, InputFormat.JSON).stream().map(String::valueOf).toList();
  }

  @Test
  void everyOutputIsAsItsSchemaSays() throws IOException {
    Ran.in(folder, "settings", "currency", "EUR");
    for (String command : COMMANDS) {
      check(command.split(" ", -1));
    }
    Path bad = folder.resolve("bad.csv");
    Files.writeString(
        bad, "Body style,Colour,Length (mm),Pieces\npaddle,red,75,lots\nshad,blue,75,5+\n");
    check("import", bad.toString(), "--dry-run");
    String[] lists = {"tray.xlsx", "trips.xlsx", "plan.xlsx", "prices.xlsx"};
    List<String> load = new ArrayList<>(List.of("import"));
    Stream.of(lists).map(list -> "demo-data/" + list).forEach(load::add);
    load.addAll(List.of("--count-date", "2026-03-15"));
    check(load.toArray(String[]::new));
    Ran.in(folder, "agree", "mtr oil", "=", "motor oil");
    for (String command : COMMANDS) {
      check(command.split(" ", -1));
    }
    check("why", "paddle motor oil 75");
    check("why", "sandeel rust 115");
    Set<String> described;
    try (Stream<Path> files = Files.list(SCHEMAS)) {
      described =
          files
              .map(file -> file.getFileName().toString().replace(".schema.json", ""))
              .collect(Collectors.toCollection(TreeSet::new));
    }
    assertEquals(described, checked, "a schema for each output, and an output for each schema");
  }

  @Test
  void whatIsNotAsItShouldBeIsFound() throws IOException {
    Ran.in(folder, "settings", "currency", "EUR");
    String json = Ran.in(folder, "settings", "--format", "json").out();
    assertEquals(List.of(), faults("settings", json));
    assertFalse(faults("settings", json.replace("\"value\"", "\"worth\"")).isEmpty());
    assertFalse(faults("settings", json.replace("\"units\"", "7")).isEmpty());
  }
}
