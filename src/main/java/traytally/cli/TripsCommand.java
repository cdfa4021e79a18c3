package traytally.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.report.TripsReport;
import traytally.store.Box;

/** {@code trips}: lists the stints of your log. */
@Command(
    name = "trips",
    description = "Lists the stints of your log; logs a trip.",
    subcommands = TripsCommand.Log.class,
    footer = {"", "Example: traytally trips --format json", "Example: " + TripLine.EXAMPLE})
final class TripsCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Override
  public Integer call() {
    try (Box box = root.openBox()) {
      output.print(root, TripsReport.of(box.stints(), box.settings(), root.today()));
    }
    return Exit.OK;
  }

  /** {@code trips log}: records one trip told in a line. */
  @Command(
      name = "log",
      description = {
        "Records one trip as one batch: asks through it at the keyboard, or takes it in one line:",
        "",
        "  DATE [WATER] [FISH] [CLARITY] [RODS]: STINT; STINT; ...",
        "",
        "DATE is 2026-05-02, today or yesterday. A water of several words that is not in the log"
            + " yet goes in quotes. CLARITY is clear, stained, cloudy or dirty; RODS is 2r.",
        "A STINT is a plastic - its row in the last listing, or words of its name in any order -"
            + " and any of these, in any order:",
        "  60m or 1:00  minutes one rod fished it      40c  casts",
        "  3f follows   3t takes   2h hooked   2l landed   2r rods",
        "  -1 lost, with how: -1 snag, -1 bite, -1 torn, -1 cast; -2 worn",
        "Whole words do too: 60 minutes, 3 takes. What is not said follows: 2l alone means two"
            + " takes, hooked and landed.",
        "A shell ends a command at a semicolon: put the line in quotes, or write / between stints.",
        ""
      },
      footer = {"", "Example: " + TripLine.EXAMPLE})
  static final class Log implements Callable<Integer> {
    @ParentCommand private TripsCommand parent;
    @Mixin private HandOptions hand;

    @Parameters(
        arity = "0..*",
        paramLabel = "LINE",
        description = "The trip, as above. Nothing asks through it at the keyboard.")
    private List<String> words = List.of();

    @Override
    public Integer call() {
      if (words.isEmpty()) {
        return TripTalk.run(parent.root, hand);
      }
      String line = TripWords.joined(words);
      return hand.record(parent.root, false, book -> TripLine.change(parent.root, book, line));
    }
  }
}
