package traytally.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Safe copies of a box: whole, checked, and named only once they are both. */
final class Copies {
  /** Copies kept from before imports (import.md, promise 1). */
  private static final int KEPT = 20;

  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH-mm-ss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);
  private static final Pattern KEPT_NAME =
      Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d-\\d\\d-\\d\\dZ-\\d{3}\\.box");

  private final Path file;
  private final Connection connection;

  Copies(Path file, Connection connection) {
    this.file = file;
    this.connection = connection;
  }

  /** Where the copies from before imports lie. */
  static Path folder(Path box) {
    return box.resolveSibling(box.getFileName() + ".before-import");
  }

  /** Writes a copy that takes the name {@code target} only when it is whole and sound. */
  Path copyTo(Path target) {
    try {
      refuseStrangers(target);
      Path folder = target.getParent();
      if (folder == null) {
        throw new IOException("not a file");
      }
      BoxFile.createFolders(folder);
      try (Part part = Part.beside(target)) {
        // The driver makes no file of its own here: that of a part is for its owner only.
        fill(part.path());
        verify(part.path());
        BoxFile.dropJournal(target);
        part.take();
        return target;
      }
    } catch (IOException e) {
      throw BoxFile.cannotCreate(target, e);
    }
  }

  private void refuseStrangers(Path target) throws IOException {
    if (Files.exists(target) && (Files.isSameFile(target, file) || !BoxFile.isBox(target))) {
      throw new BoxException(
          BoxException.Kind.CANNOT_CREATE,
          target + " exists and is no copy of this box. Choose another name.");
    }
  }

  private void fill(Path part) {
    // One consistent state, without a gap; the header's marks go with it.
    try (PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
      vacuum.setString(1, part.toString());
      vacuum.execute();
    } catch (SQLException e) {
      throw BoxException.of(file, e);
    }
  }

  private void verify(Path part) {
    try (Connection copy = BoxFile.connect(part, Duration.ZERO)) {
      List<String> problems = Check.integrity(copy);
      if (!problems.isEmpty()
          || Schema.pragma(copy, "user_version") != Schema.pragma(connection, "user_version")) {
        throw new BoxException(
            BoxException.Kind.IO,
            "The copy " + part + " is not sound " + problems + ". Check the disk.");
      }
    } catch (SQLException e) {
      throw BoxException.of(part, e);
    }
  }

  /** Keeps a copy from before an import, and no more than the last twenty. */
  Path keep(Instant now) {
    return keep(folder(file), KEPT, now);
  }

  /** Keeps a copy of a box of an older version from before it is brought up to date. */
  Path keepOld(Instant now) {
    return keep(file.resolveSibling(file.getFileName() + ".before-update"), KEPT, now);
  }

  /** Keeps a dated copy in {@code folder}, and no more than the last {@code kept} of them. */
  Path keep(Path folder, int kept, Instant now) {
    String stamp = STAMP.format(now);
    int number = 0;
    Path target = folder.resolve(name(stamp, number));
    while (Files.exists(target)) {
      target = folder.resolve(name(stamp, ++number));
    }
    copyTo(target);
    try {
      dropOldest(folder, target, kept);
    } catch (IOException e) {
      throw BoxFile.cannotCreate(target, e);
    }
    return target;
  }

  private static String name(String stamp, int number) {
    return String.format(Locale.ROOT, "%s-%03d.box", stamp, number);
  }

  /** Drops the oldest copies by name, but never the one just made, whatever the clock says. */
  private static void dropOldest(Path folder, Path made, int kept) throws IOException {
    List<Path> others;
    try (Stream<Path> files = Files.list(folder)) {
      others =
          files
              .filter(f -> KEPT_NAME.matcher(f.getFileName().toString()).matches())
              .filter(f -> !f.equals(made))
              .sorted()
              .toList();
    }
    for (Path old : others.subList(0, Math.max(0, others.size() - (kept - 1)))) {
      Files.delete(old);
    }
  }
}
