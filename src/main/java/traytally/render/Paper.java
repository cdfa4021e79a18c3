package traytally.render;

import java.util.Optional;
import org.apache.poi.ss.usermodel.PrintSetup;
import traytally.plastic.Worded;

/** The sheet of paper that is printed on. */
public enum Paper implements Worded {
  A4(PrintSetup.A4_PAPERSIZE),
  LETTER(PrintSetup.LETTER_PAPERSIZE);

  private final short code;

  Paper(short code) {
    this.code = code;
  }

  /** The paper that {@code word} names, without regard to case. */
  public static Optional<Paper> parse(String word) {
    return Worded.parse(values(), word);
  }

  /** The number that stands for it in a workbook. */
  short code() {
    return code;
  }
}
