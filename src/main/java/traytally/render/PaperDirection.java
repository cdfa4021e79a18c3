package traytally.render;

import com.openhtmltopdf.bidi.BidiSplitter;
import com.openhtmltopdf.bidi.BidiTextRun;
import java.text.Bidi;

/** Where the direction of writing changes within a paragraph: UAX #9 as Java's library has it. */
final class PaperDirection implements BidiSplitter {
  private Bidi runs = new Bidi("", Bidi.DIRECTION_LEFT_TO_RIGHT);

  @Override
  public void setParagraph(String paragraph, byte direction) {
    int base =
        switch (direction) {
          case LTR -> Bidi.DIRECTION_LEFT_TO_RIGHT;
          case RTL -> Bidi.DIRECTION_RIGHT_TO_LEFT;
          default -> Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT;
        };
    runs = new Bidi(paragraph, base);
  }

  @Override
  public int countTextRuns() {
    return runs.getRunCount();
  }

  @Override
  public BidiTextRun getVisualRun(int run) {
    int from = runs.getRunStart(run);
    byte direction = runs.getRunLevel(run) % 2 == 0 ? LTR : RTL;
    return new BidiTextRun(from, runs.getRunLimit(run) - from, direction);
  }

  @Override
  public byte getBaseDirection(String paragraph) {
    return Direction.of(paragraph).isEmpty() ? LTR : RTL;
  }
}
