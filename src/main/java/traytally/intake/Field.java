package traytally.intake;

import static traytally.intake.ListKind.BOX;
import static traytally.intake.ListKind.PLAN;
import static traytally.intake.ListKind.PRICES;
import static traytally.intake.ListKind.TRIPS;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** What a column may tell. */
public enum Field {
  MAKER("maker", BOX, TRIPS, PRICES),
  BODY("body style", BOX, TRIPS, PRICES),
  COLOUR("colour", BOX, TRIPS, PRICES),
  /** Of a lure of two colours, such as that of its tail. */
  SECOND_COLOUR("second colour", BOX, TRIPS, PRICES),
  LENGTH("length", BOX, TRIPS, PRICES),
  PIECES("pieces", BOX),
  /** Sealed packs, beside loose pieces. */
  PACKS("packs", BOX),
  LOOSE("loose", BOX),
  /** Pieces at the start of a tally. */
  HAD("had", BOX),
  /** Pieces that came since. */
  BOUGHT_SINCE("bought since", BOX),
  LOST_SO_FAR("lost so far", BOX),
  GIVEN_AWAY("given away", BOX),
  /** Pieces in the book when it wrote the list to be edited. */
  BOOK_SAYS("book says", BOX),
  PACK_SIZE("pack size", BOX, PRICES),
  PACK_PRICE("pack price", BOX, PRICES),
  TRAY("tray", BOX),
  BASE("base swatch", BOX),
  FLAKE("flake swatch", BOX),
  FINISH("finish", BOX),
  KEPT("kept", BOX),
  /** The day fished, planned, or counted. */
  DATE("date", BOX, TRIPS, PLAN),
  WATER("water", TRIPS, PLAN),
  SPECIES("species", TRIPS, PLAN),
  CLARITY("clarity", TRIPS, PLAN),
  MINUTES("minutes", TRIPS),
  START("start", TRIPS, PLAN),
  END("end", TRIPS, PLAN),
  CASTS("casts", TRIPS),
  FOLLOWS("follows", TRIPS),
  TAKES("takes", TRIPS),
  HOOKED("hooked", TRIPS),
  LANDED("landed", TRIPS),
  LOST("lost", TRIPS),
  LOST_HOW("lost how", TRIPS),
  /** Pieces lost by cause, each cause in a column of its own. */
  SNAGGED("snagged", TRIPS),
  BITTEN_OFF("bitten off", TRIPS),
  TORN("torn", TRIPS),
  CAST_OFF("cast off", TRIPS),
  WORN("worn", TRIPS),
  RODS("rods", TRIPS, PLAN),
  HOURS("hours", PLAN),
  SHOP("shop", PRICES),
  CURRENCY("currency", PRICES),
  IN_STOCK("in stock", PRICES),
  POSTAGE("postage", PRICES),
  FREE_OVER("free postage over", PRICES),
  DELIVERY_DAYS("delivery days", PRICES),
  NOTE("note", BOX, TRIPS, PLAN);

  private final String word;

  // Made once from an array nobody else holds, so it is as fixed as the enum.
  @SuppressWarnings("ImmutableEnumChecker")
  private final Set<ListKind> kinds;

  Field(String word, ListKind first, ListKind... others) {
    this.word = word;
    this.kinds = Collections.unmodifiableSet(EnumSet.of(first, others));
  }

  /** The word the angler uses for it: {@code body style}. */
  public String word() {
    return word;
  }

  boolean isIn(ListKind kind) {
    return kinds.contains(kind);
  }

  /**
   * The words that stand over such a column of a list of this kind, strongest first.
   *
   * @param how {@code ""}, or {@code " alone"} for those beside which nothing else may stand
   */
  List<String> headers(ListKind kind, String how, WordList words) {
    return Stream.concat(
            words.words(kind.word() + "." + word + how).stream(), words.words(word + how).stream())
        .toList();
  }

  /** The field that {@code word} names: ours, or the header word of a template. */
  public static Optional<Field> parse(String word) {
    String wanted = ColumnHeader.of(word).folded();
    return Arrays.stream(values())
        .filter(f -> f.word.equals(wanted) || f.name().equalsIgnoreCase(wanted.replace(' ', '_')))
        .findFirst();
  }
}
