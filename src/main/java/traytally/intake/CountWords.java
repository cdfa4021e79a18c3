package traytally.intake;

/** What is wrong with a count of a log, in the words of its column and not of a box list. */
final class CountWords {
  private CountWords() {}

  /** The problem {@code wrong} of a count of pieces, as it reads under {@code field}. */
  static String of(Field field, String wrong) {
    String what =
        switch (field) {
          case FOLLOWS -> "follows";
          case TAKES -> "takes";
          case HOOKED -> "hooked fish";
          case LANDED, SPECIES -> "fish landed";
          case CASTS -> "casts";
          case RODS -> "rods";
          case WORN -> "pieces worn out";
          case LOST, SNAGGED, BITTEN_OFF, TORN, CAST_OFF -> "pieces lost";
          default -> "pieces";
        };
    if (wrong.equals(Quantities.NEGATIVE)) {
      return "is less than none. Write the number of " + what + ", 0 if there were none.";
    }
    if (wrong.startsWith(Quantities.NO_COUNT)) {
      return "is not a number of " + what + ". Write a number such as 2, 0 if there were none.";
    }
    return wrong.equals(Quantities.TOO_MANY)
        ? "is too many to be true. Write the number of " + what + "."
        : wrong;
  }
}
