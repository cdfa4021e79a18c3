package traytally.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A trip that is being told, kept beside the box until it is recorded: the words of {@code trips
 * log}, the head on the first line with its colon, each stint on a line of its own.
 */
final class TripDraft {
  private final Path file;
  private final Desk desk;
  private String head = "";
  private final List<String> stints = new ArrayList<>();
  private boolean unkept;

  private TripDraft(Path file, Desk desk) {
    this.file = file;
    this.desk = desk;
  }

  /** An empty draft for the box at {@code box}. */
  static TripDraft beside(Path box, Desk desk) {
    return new TripDraft(box.resolveSibling(box.getFileName() + ".draft"), desk);
  }

  /** What an earlier evening left beside the box, if it did. */
  static Optional<TripDraft> left(Path box, Desk desk) {
    TripDraft draft = beside(box, desk);
    if (!Files.isRegularFile(draft.file)) {
      return Optional.empty();
    }
    try {
      List<String> lines = Files.readAllLines(draft.file, StandardCharsets.UTF_8);
      if (lines.isEmpty() || !lines.get(0).endsWith(":")) {
        return Optional.empty();
      }
      draft.head = lines.get(0).substring(0, lines.get(0).length() - 1);
      draft.stints.addAll(lines.subList(1, lines.size()));
      return Optional.of(draft);
    } catch (IOException e) {
      desk.err().println("The draft " + draft.file + " cannot be read: it is left where it is.");
      return Optional.empty();
    }
  }

  Path file() {
    return file;
  }

  String head() {
    return head;
  }

  List<String> stints() {
    return List.copyOf(stints);
  }

  void head(String text) {
    head = text;
    save();
  }

  void add(String stint) {
    stints.add(stint);
    save();
  }

  void put(int index, String stint) {
    stints.set(index, stint);
    save();
  }

  void drop(int index) {
    stints.remove(index);
    save();
  }

  /** Takes it away: it is recorded, or wanted no more. */
  void forget() {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      desk.err().println("The draft " + file + " cannot be deleted: delete it by hand.");
    }
  }

  /** Whether the next evening would find it. */
  boolean isKept() {
    return !stints.isEmpty() && !unkept && Files.exists(file);
  }

  /** A terminal may die at any moment: what was said is on the disk before the next question. */
  private void save() {
    String text = head + ":\n" + String.join("\n", stints) + "\n";
    try {
      Output.save(file, to -> to.write(text.getBytes(StandardCharsets.UTF_8)));
      unkept = false;
    } catch (Refusal e) {
      if (!unkept) {
        desk.err().println("No draft can be kept: " + e.getMessage());
      }
      unkept = true;
    }
  }
}
