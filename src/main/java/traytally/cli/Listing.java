package traytally.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import traytally.plastic.Plastic;

/**
 * The plastics of the last listing by row, remembered from one command to the next, so that {@code
 * 7} names one.
 *
 * <p>They lie in the person's own state folder and not in the box: to look at a box leaves it as it
 * is. The first line names the box, each other one a plastic, its four parts between tabs.
 */
final class Listing {
  private static final Pattern PLASTIC = Pattern.compile("[^\t]*(\t[^\t]+){2}\t\\d{1,3}");

  private final Traytally root;
  private final Path file;

  private Listing(Traytally root) {
    this.root = root;
    this.file = root.stateFolder().resolve("last-listing.txt");
  }

  static Listing of(Traytally root) {
    return new Listing(root);
  }

  /** Row n of what was just listed is the n-th of {@code plastics}. */
  void remember(List<Plastic> plastics) {
    StringBuilder lines = new StringBuilder(box()).append('\n');
    for (Plastic plastic : plastics) {
      lines.append(plastic.maker()).append('\t').append(plastic.body()).append('\t');
      lines.append(plastic.colour()).append('\t').append(plastic.lengthMm()).append('\n');
    }
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      Output.save(file, to -> to.write(lines.toString().getBytes(StandardCharsets.UTF_8)));
    } catch (IOException | Refusal e) {
      root.desk().err().println("Row numbers of this list name nothing: cannot write " + file);
    }
  }

  /** The plastics of the last listing of this box; none if another box was listed since. */
  List<Plastic> last() {
    if (!Files.isReadable(file)) {
      return List.of();
    }
    try {
      List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
      List<Plastic> plastics = new ArrayList<>();
      for (String line : lines.subList(Math.min(1, lines.size()), lines.size())) {
        if (!lines.get(0).equals(box()) || !PLASTIC.matcher(line).matches()) {
          return List.of();
        }
        String[] parts = line.split("\t", -1);
        plastics.add(Plastic.of(parts[0], parts[1], parts[2], Integer.parseInt(parts[3])));
      }
      return plastics;
    } catch (IOException e) {
      throw new Refusal(
          Exit.IO, "cannot read " + file + ", which remembers the rows listed last. Delete it.", e);
    }
  }

  private String box() {
    return root.boxFile().toAbsolutePath().normalize().toString();
  }
}
