package traytally.sheet;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** What stands in one cell; for a formula, its stored result. */
public sealed interface Cell {
  /** The cell as the person sees or typed it, as near as can be told without its column's width. */
  String shown();

  /** Whether a person sees nothing here: an empty cell, or text of blanks alone. */
  default boolean isBlank() {
    return false;
  }

  /** A cell with nothing in it. */
  static Cell blank() {
    return Blank.ONLY;
  }

  /** Text, or a blank cell where there is none. */
  static Cell text(String text) {
    return text.isEmpty() ? Blank.ONLY : new Text(text);
  }

  /** Nothing at all. */
  record Blank() implements Cell {
    private static final Blank ONLY = new Blank();

    @Override
    public String shown() {
      return "";
    }

    @Override
    public boolean isBlank() {
      return true;
    }
  }

  /** Characters, kept exactly; every cell of a text file is one. */
  record Text(String text) implements Cell {
    public Text {
      if (text.isEmpty()) {
        throw new IllegalArgumentException("text must not be empty: that is a blank cell");
      }
    }

    @Override
    public String shown() {
      return text;
    }

    @Override
    public boolean isBlank() {
      // No-break spaces (A0, 2007, 202F) are blanks to the eye but not to String.isBlank.
      return text.chars().allMatch(c -> Character.isWhitespace(c) || Character.isSpaceChar(c));
    }
  }

  /**
   * A number that is not a date.
   *
   * @param format the number format's code, "General" where none was chosen; it may hold a unit or
   *     a currency that the number itself lacks, as {@code 0" mm"}
   */
  record Numeric(double value, String format) implements Cell {
    /** Digits a spreadsheet program shows and keeps (ECMA-376 part 1, 18.3.1.96 and practice). */
    private static final MathContext SHOWN = new MathContext(15, RoundingMode.HALF_EVEN);

    /** From here on up, and from its inverse down, plain digits no longer help the eye. */
    private static final double PLAIN_BELOW = 1e21;

    public Numeric {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("value must be finite: " + value);
      }
    }

    @Override
    public String shown() {
      double size = Math.abs(value);
      if (size < 1e15 && value == Math.rint(value)) {
        return Long.toString((long) value);
      }
      BigDecimal rounded = new BigDecimal(value).round(SHOWN).stripTrailingZeros();
      return size < PLAIN_BELOW && size > 1 / PLAIN_BELOW
          ? rounded.toPlainString()
          : rounded.toString();
    }
  }

  /** A day, or a day and the time of it. */
  record DateTime(LocalDateTime when) implements Cell {
    private static final DateTimeFormatter MINUTES =
        DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final DateTimeFormatter SECONDS =
        DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

    @Override
    public String shown() {
      if (when.toLocalTime().equals(LocalTime.MIDNIGHT)) {
        return when.toLocalDate().toString();
      }
      return when.format(when.getSecond() == 0 ? MINUTES : SECONDS);
    }
  }

  /** A time of day or a length of time: in a sheet both are a number shown as hours and minutes. */
  record Time(Duration length) implements Cell {
    public Time {
      if (length.isNegative()) {
        throw new IllegalArgumentException("length must not be negative: " + length);
      }
    }

    @Override
    public String shown() {
      String minutes =
          String.format(Locale.ROOT, "%d:%02d", length.toHours(), length.toMinutesPart());
      return length.toSecondsPart() == 0
          ? minutes
          : minutes + String.format(Locale.ROOT, ":%02d", length.toSecondsPart());
    }
  }

  /** Yes or no. */
  record Bool(boolean value) implements Cell {
    @Override
    public String shown() {
      return value ? "TRUE" : "FALSE";
    }
  }

  /** A formula that came to nothing, as {@code #DIV/0!}. */
  record ErrorValue(String code) implements Cell {
    @Override
    public String shown() {
      return code;
    }
  }
}
