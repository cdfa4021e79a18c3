package traytally.cli;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.DateTimeException;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import java.util.zip.CRC32C;
import traytally.report.Report;
import traytally.store.Part;

/**
 * What was worked out of a box as it is, kept so that asking again costs no weighing of the log.
 *
 * <p>The same box, day and question have the same answer. An answer lies in the person's cache
 * folder under names of the box, of what it holds (its edition) and of the question; whatever
 * changes the box gives it another edition, and its older answers go when the next one is kept. Any
 * of them may be deleted at any time.
 */
final class Answers {
  /** Answers kept of one edition of a box: more than a person asks between two entries. */
  private static final int MOST = 40;

  private static final String ENDING = ".answer";

  private final Path folder;
  private final String edition;
  private final String box; // how names of the box's answers begin
  private final String now; // how those of this edition begin

  /**
   * The answers of one box.
   *
   * @param folder where they lie
   * @param edition of the box; what is kept of another one is forgotten
   */
  Answers(Path folder, Path box, String edition) {
    this.folder = folder;
    this.edition = edition;
    this.box = sum(box.toString()) + "-";
    this.now = this.box + sum(edition) + "-";
  }

  /** The answer to {@code question}, worked out if it is not remembered. */
  Report to(String question, Supplier<Report> work) {
    String whole = edition + '\n' + program() + '\n' + question;
    // The question itself stands in the file, should two sums be alike.
    Path file = folder.resolve(now + sum(whole) + ENDING);
    Optional<Report> known = read(file, whole);
    if (known.isPresent()) {
      return known.get();
    }
    Report answer = work.get();
    keep(file, whole, answer);
    return answer;
  }

  /** Which build of the program answers: another one may answer otherwise. */
  private static String program() {
    StringBuilder program = new StringBuilder();
    for (String part : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
      // A program that was not packaged lies in folders.
      try (Stream<Path> files = Files.walk(Path.of(part))) {
        files.map(Answers::changed).max(Comparator.naturalOrder()).ifPresent(program::append);
      } catch (IOException | UncheckedIOException e) {
        program.append(part); // a class path may name what is not there, or not to be read
      }
    }
    return program.toString();
  }

  private static FileTime changed(Path file) {
    try {
      return Files.getLastModifiedTime(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Optional<Report> read(Path file, String question) {
    if (!Files.isReadable(file)) {
      return Optional.empty();
    }
    try {
      byte[] all = Files.readAllBytes(file);
      byte[] asked = question.getBytes(StandardCharsets.UTF_8);
      int from = Long.BYTES + asked.length;
      boolean same =
          all.length > from
              && Arrays.equals(asked, 0, asked.length, all, Long.BYTES, from)
              && ByteBuffer.wrap(all).getLong() == sum(all, Long.BYTES);
      return same
          ? Optional.of(ReportBytes.read(Arrays.copyOfRange(all, from, all.length)))
          : Optional.empty();
    } catch (IOException | IllegalArgumentException | DateTimeException e) {
      // It is worked out again, and written anew.
      return Optional.empty();
    }
  }

  private void keep(Path file, String question, Report answer) {
    byte[] asked = question.getBytes(StandardCharsets.UTF_8);
    byte[] report = ReportBytes.of(answer);
    ByteBuffer all = ByteBuffer.allocate(Long.BYTES + asked.length + report.length);
    all.position(Long.BYTES).put(asked).put(report);
    all.putLong(0, sum(all.array(), Long.BYTES));
    try {
      Files.createDirectories(folder);
      forget();
      Part.write(file, to -> to.write(all.array()));
    } catch (IOException e) {
      // Nobody asked for it to be kept, and the answer is there: next time it takes as long again.
    }
  }

  /** Takes away the answers of other editions of the box, and all of them if there are many. */
  private void forget() throws IOException {
    List<Path> kept;
    try (Stream<Path> files = Files.list(folder)) {
      kept = files.filter(file -> begins(file, box)).sorted().toList();
    }
    for (Path file : kept) {
      if (kept.size() >= MOST || !begins(file, now)) {
        Files.deleteIfExists(file);
      }
    }
  }

  private static boolean begins(Path file, String name) {
    return String.valueOf(file.getFileName()).startsWith(name);
  }

  private static long sum(byte[] bytes, int from) {
    CRC32C sum = new CRC32C();
    sum.update(bytes, from, bytes.length - from);
    return sum.getValue();
  }

  private static String sum(String text) {
    return Long.toHexString(sum(text.getBytes(StandardCharsets.UTF_8), 0));
  }
}
