package traytally.render;

import org.apache.poi.ss.usermodel.PrintSetup;

/** The sheet of paper a workbook is set up to be printed on. */
public enum Paper {
  A4(PrintSetup.A4_PAPERSIZE),
  LETTER(PrintSetup.LETTER_PAPERSIZE);

  private final short code;

  Paper(short code) {
    this.code = code;
  }

  /** The number that stands for it in a workbook. */
  short code() {
    return code;
  }
}
