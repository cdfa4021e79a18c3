package traytally.cli;

import java.util.Collection;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.ledger.Book;
import traytally.plastic.Plastic;

/** Completes the line of a stint: its plastic from the words of its name, how pieces were lost. */
record StintCompletion(Book book) implements Completion {
  private static final Pattern LOST_HOW = Pattern.compile("(?<!\\S)-\\d{1,4}\\s+([a-z]*)$");
  private static final List<String> HOW = List.of("snag", "bite", "torn", "cast", "worn");

  @Override
  public Offers at(String before) {
    Matcher lost = LOST_HOW.matcher(before);
    if (lost.find()) {
      List<String> how = HOW.stream().filter(word -> word.startsWith(lost.group(1))).toList();
      if (!how.isEmpty()) {
        return new Offers(lost.start(1), how);
      }
    }
    int from = StintWords.afterCounts(before);
    String name = StintWords.nameIn(before);
    Collection<Plastic> fitting =
        name.isBlank() ? book.plastics() : PlasticNames.fitting(name, book);
    return new Offers(from, fitting.stream().map(this::name).toList());
  }

  /** The plain name where that is understood, else in quotes. */
  private String name(Plastic plastic) {
    String plain = plastic.toString();
    boolean whole = TripLine.stints(plain).equals(List.of(plain));
    StintWords read = StintWords.parse(plain);
    return whole
            && read.isBare()
            && PlasticNames.fitting(read.plastic(), book).equals(List.of(plastic))
        ? plain
        : PlasticNames.quoted(plastic);
  }
}
