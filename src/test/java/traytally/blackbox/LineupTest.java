package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.cli.Ran;

/** {@code lineup}, {@code guide} and {@code colours}, run as an angler would. */
class LineupTest {
  @TempDir Path folder;

  private Ran run(String... args) {
    Ran ran = Ran.in(folder, args);
    assertEquals(0, ran.code(), ran.err());
    return ran;
  }

  private Json json(String... args) {
    String[] all = Arrays.copyOf(args, args.length + 2);
    all[args.length] = "--format";
    all[args.length + 1] = "json";
    return Json.parse(run(all).out());
  }

  private void write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.writeString(file, text);
    run("import", file.toString());
  }

  /** Ink is best, lemon good, chalk poor, rust untried; the ink curl tail is gone. */
  private void anglersBox() throws IOException {
    write(
        "box.csv",
        """
        Body style,Colour,Length (mm),Pieces,Base swatch
        curl tail,ink,90,0,#14161f
        paddle tail,ink,75,5,#14161f
        paddle tail,lemon,75,9,#f5e642
        paddle tail,butter,75,9,#f0e050
        paddle tail,chalk,75,20,#f2f2ec
        paddle tail,rust,75,6,#9c4a1a
        paddle tail,moss,75,1,#6b7a3a
        """);
    StringBuilder trips =
        new StringBuilder(
            "Date,Water,Species,Clarity,Body style,Colour,Length (mm),Minutes,Takes,Lost\n");
    for (int day = 1; day <= 24; day++) {
      String head = "2026-03-%02d,Gull Rocks,pollack,clear,".formatted(day);
      trips.append(head).append("curl tail,ink,90,60,").append(6 + day % 3).append(",1\n");
      trips.append(head).append("paddle tail,ink,75,30,").append(2 + day % 2).append(",0\n");
      trips.append(head).append("paddle tail,lemon,75,60,").append(3 + day % 3).append(",1\n");
      trips.append(head).append("paddle tail,butter,75,60,").append(3 + day % 2).append(",0\n");
      trips.append(head).append("paddle tail,chalk,75,60,").append(day % 4 / 3).append(",1\n");
    }
    write("trips.csv", trips.toString());
    write("plan.csv", "Date,Water,Species,Clarity,Hours\n2026-05-09,Gull Rocks,pollack,clear,5\n");
  }

  private static List<Json> of(Json lineup, String role) {
    return lineup.rows().stream().filter(row -> row.text("role").equals(role)).toList();
  }

  @Test
  void theBestComesFirstAndEveryChangeIsOne() throws IOException {
    anglersBox();
    Json lineup = json("lineup");
    assertEquals("2026-05-09", lineup.text("date"));
    assertEquals("pollack", lineup.text("species"));
    assertEquals("ink", of(lineup, "first").get(0).text("colour"));
    assertEquals(75, of(lineup, "first").get(0).number("length_mm"));
    Set<String> tones = new HashSet<>();
    for (Json row : lineup.rows()) {
      if (row.text("role").equals("first") || row.text("role").equals("next")) {
        assertTrue(tones.add(row.text("tone")), "no change of tone: " + row.text("tone"));
      }
    }
    assertEquals(1, of(lineup, "next").size(), "butter is lemon's tone, chalk is poor");
  }

  @Test
  void oneToTryHasASpare() throws IOException {
    anglersBox();
    List<Json> toTry = of(json("lineup"), "try");
    assertEquals(1, toTry.size());
    assertEquals("rust", toTry.get(0).text("colour"), "of moss there is one only");
    assertEquals(1, toTry.get(0).number("chance_best"), 1e-9);
  }

  @Test
  void whatIsGoneIsSaidWithWhatStandsIn() throws IOException {
    anglersBox();
    List<Json> gone = of(json("lineup"), "gone");
    assertEquals(1, gone.size());
    assertEquals("curl tail", gone.get(0).text("body"));
    assertEquals("paddle tail, ink, 75 mm", gone.get(0).text("stand_in"));
    assertEquals(
        "none left; trusted; instead: paddle tail, ink, 75 mm", gone.get(0).text("reason"));
  }

  @Test
  void carryIsEnoughForLongerTripsToo() throws IOException {
    anglersBox();
    double day = of(json("lineup"), "first").get(0).number("carry");
    double weekend = of(json("lineup", "--hours", "40"), "first").get(0).number("carry");
    assertTrue(day >= 1 && weekend > day, day + " and " + weekend);
  }

  @Test
  void optionsMakeAnotherTrip() throws IOException {
    anglersBox();
    Json lineup =
        json("lineup", "--date", "2026-06-01", "--for", "bass", "--in", "dirty", "--hours", "3");
    assertEquals("2026-06-01", lineup.text("date"));
    assertEquals("bass", lineup.text("species"));
    assertEquals("dirty", lineup.text("clarity"));
    assertEquals(3, lineup.number("hours"));
    assertEquals(2, Ran.in(folder, "lineup", "--date", "2026-04-01").code());
    assertEquals(2, Ran.in(folder, "lineup", "--hours", "0").code());
    assertEquals(2, Ran.in(folder, "lineup", "--in", "brown").code());
  }

  private void silentBox() throws IOException {
    write(
        "box.csv",
        """
        Body style,Colour,Length (mm),Pieces
        paddle tail,black,75,5
        paddle tail,yellow,75,5
        paddle tail,olive,75,5
        paddle tail,old faithful,75,5
        """);
  }

  @Test
  void whereTheLogIsSilentTheGuideSettlesIt() throws IOException {
    silentBox();
    Json clear = json("lineup", "--in", "clear");
    assertEquals("olive", of(clear, "first").get(0).text("colour"));
    assertEquals(2, of(clear, "first").get(0).number("leaning"));
    run("guide", "set", "--in", "clear", "pale", "bright", "2");
    run("guide", "set", "--in", "clear", "mid", "muted", "-2");
    Json changed = json("lineup", "--in", "clear");
    assertEquals("yellow", of(changed, "first").get(0).text("colour"));
    String said = run("lineup", "--in", "clear").out().replaceAll("\\s+", " ");
    assertTrue(said.contains("It is common practice, not evidence"), said);
    run("guide", "reset");
    assertEquals("olive", of(json("lineup", "--in", "clear"), "first").get(0).text("colour"));
    assertEquals(65, Ran.in(folder, "guide", "reset").code());
  }

  @Test
  void changingTheGuideChangesNoTrust() throws IOException {
    anglersBox();
    String trust = run("trust", "plastic", "--format", "json").out();
    String pollack = run("trust", "--for", "pollack", "--format", "json").out();
    String list = run("restock", "--format", "json").out();
    Json before = json("lineup");
    for (String tone : List.of("dark muted", "pale muted", "mid bright", "pale bright")) {
      String[] words = tone.split(" ", -1);
      run("guide", "set", words[0], words[1], tone.startsWith("dark") ? "-2" : "2");
    }
    assertEquals(trust, run("trust", "plastic", "--format", "json").out());
    assertEquals(pollack, run("trust", "--for", "pollack", "--format", "json").out());
    assertEquals(list, run("restock", "--format", "json").out());
    assertEquals(
        of(before, "first").get(0).text("colour"),
        of(json("lineup"), "first").get(0).text("colour"),
        "nor does it overrule what the log says");
  }

  @Test
  void aWordTheAnglerSetsGivesALook() throws IOException {
    silentBox();
    Json colours = json("colours");
    assertEquals(4, colours.rows().size());
    Json faithful = colours.rows().get(1);
    assertEquals("old faithful", faithful.text("colour"));
    assertTrue(faithful.isNull("tone"));
    run("colours", "set", "Faithful", "#5a5222");
    Json now = json("colours").rows().get(1);
    assertEquals("dark muted", now.text("tone"));
    assertTrue(now.yes("assumed"));
    assertTrue(run("colours", "words").out().contains("#5a5222"));
    run("undo");
    assertTrue(json("colours").rows().get(1).isNull("tone"));
    run("colours", "set", "black", "none");
    assertTrue(json("colours").rows().get(0).isNull("base"));
    run("colours", "withdraw", "black");
    assertFalse(json("colours").rows().get(0).isNull("base"));
    assertEquals(65, Ran.in(folder, "colours", "withdraw", "black").code());
    assertEquals(2, Ran.in(folder, "colours", "set", "black", "dark").code());
  }

  @Test
  void anEmptyBoxHasNothingToTieOn() throws IOException {
    write("box.csv", "Body style,Colour,Length (mm),Pieces\npaddle tail,black,75,0\n");
    assertTrue(run("lineup").out().contains("there is nothing to tie on"));
    assertEquals(0, json("lineup").rows().size());
  }
}
