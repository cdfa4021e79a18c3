package traytally.ledger;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import traytally.plastic.Colour;
import traytally.plastic.Lexicon;
import traytally.plastic.Look;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;
import traytally.plastic.Tone;

/**
 * How the colours of a book look: by the swatches the angler gave, else by the everyday words in
 * their names.
 */
public final class Palette {
  /**
   * One colour.
   *
   * @param assumed whether its swatch comes from the words of its name
   */
  public record Entry(Colour colour, boolean assumed) {}

  private final Lexicon lexicon;
  private final SortedMap<Name, Entry> entries = new TreeMap<>();

  private Palette(Book book) {
    Map<Name, Optional<Swatch>> changes = new LinkedHashMap<>();
    book.facts(Fact.ColourWord.class).forEach(word -> changes.put(word.word(), word.swatch()));
    lexicon = Lexicon.usual().with(changes);
    Map<Name, Colour> given = new HashMap<>();
    book.facts(Fact.Coloured.class).forEach(c -> given.put(c.colour().name(), c.colour()));
    for (Plastic plastic : book.plastics()) {
      add(plastic.colour(), given);
    }
    book.facts(Fact.Offered.class).forEach(o -> add(o.offer().plastic().colour(), given));
    given.keySet().forEach(name -> add(name, given));
  }

  private void add(Name name, Map<Name, Colour> given) {
    Colour told = given.getOrDefault(name, unknown(name));
    if (told.base().isPresent()) {
      entries.put(name, new Entry(told, false));
    } else {
      Colour described = lexicon.describe(name).orElse(unknown(name));
      entries.put(name, new Entry(described, described.base().isPresent()));
    }
  }

  private static Colour unknown(Name name) {
    return new Colour(name, Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** The palette of a book. */
  public static Palette of(Book book) {
    return new Palette(book);
  }

  /** Every colour the book speaks of, looks known or not, by name. */
  public SortedMap<Name, Entry> entries() {
    return Collections.unmodifiableSortedMap(entries);
  }

  /** The words it goes by where no swatch is given. */
  public Lexicon lexicon() {
    return lexicon;
  }

  /** How a colour looks, if that is known or can be assumed. */
  public Optional<Look> look(Name colour) {
    return Optional.ofNullable(entries.get(colour)).flatMap(entry -> entry.colour().look());
  }

  /** Whether a colour's swatch is an assumption. */
  public boolean assumed(Name colour) {
    return Optional.ofNullable(entries.get(colour)).map(Entry::assumed).orElse(false);
  }

  /** The tones of the colours whose looks are known or assumed. */
  public Map<Name, Tone> tones() {
    Map<Name, Tone> tones = new HashMap<>();
    entries.forEach(
        (name, entry) -> entry.colour().look().ifPresent(look -> tones.put(name, look.tone())));
    return tones;
  }
}
