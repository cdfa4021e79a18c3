package traytally.cli;

import java.util.List;
import java.util.Optional;
import traytally.ledger.Entry;
import traytally.plastic.Plastic;

/**
 * A change told by hand, understood and worked out.
 *
 * @param said what was understood, a line or more
 * @param plastics those whose pieces before and after are shown
 * @param notes what else the person should know, a sentence each
 * @param odd why it may be a slip, if it looks like one
 */
record HandChange(
    String said, List<Plastic> plastics, List<String> notes, Optional<String> odd, Entry entry) {
  HandChange {
    plastics = List.copyOf(plastics);
    notes = List.copyOf(notes);
  }

  void refuseIfOdd() {
    odd.ifPresent(
        why -> {
          throw new Refusal(Exit.DATA, why + " Nothing was recorded; add --yes if it is right.");
        });
  }
}
