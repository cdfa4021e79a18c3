package traytally.render;

/** Which way a text runs. */
final class Direction {
  private Direction() {}

  /**
   * {@code rtl} if its first letter that has a direction runs to the left (UAX #9, P2), else blank.
   */
  static String of(String text) {
    for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      switch (Character.getDirectionality(text.codePointAt(i))) {
        case Character.DIRECTIONALITY_LEFT_TO_RIGHT -> {
          return "";
        }
        case Character.DIRECTIONALITY_RIGHT_TO_LEFT,
            Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC -> {
          return "rtl";
        }
        default -> {
          // says nothing of the whole
        }
      }
    }
    return "";
  }
}
