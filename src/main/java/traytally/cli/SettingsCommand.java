package traytally.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Chosen;
import traytally.ledger.Recorded;
import traytally.ledger.Setting;
import traytally.report.SettingsReport;
import traytally.store.Box;

/** {@code settings}: the angler's choices. */
@Command(
    name = "settings",
    description = "Lists the settings, or changes one.",
    footer = {"", "Example: traytally settings currency GBP"})
final class SettingsCommand implements Callable<Integer> {
  @ParentCommand private Traytally root;
  @Mixin private Output output;

  @Parameters(
      arity = "0..2",
      paramLabel = "NAME VALUE",
      description = "The setting to change and its new value. Nothing lists them.")
  private List<String> words = List.of();

  @Override
  public Integer call() {
    if (words.size() < 2) {
      try (Box box = root.openBox()) {
        output.print(root, SettingsReport.of(box.settings(), root.today()));
      }
      return Exit.OK;
    }
    Setting setting = setting(words.get(0));
    String value = words.get(1);
    if (!setting.accepts(value)) {
      throw new Refusal(
          Exit.USAGE,
          setting.key() + " wants " + setting.wantedWords() + ", not \"" + value + "\".");
    }
    try (Box box = root.openOrMakeBox()) {
      root.record(box, entry(box.book(), setting, value));
    }
    return Exit.OK;
  }

  private static Entry entry(Book book, Setting setting, String value) {
    List<Recorded<? extends Fact>> before = new ArrayList<>();
    book.recorded(Chosen.class).stream()
        .filter(chosen -> chosen.what().setting() == setting)
        .forEach(before::add);
    return Entry.ofFacts(
        "settings", setting.key() + " " + value, List.of(new Chosen(setting, value)), before);
  }

  private static Setting setting(String key) {
    return Setting.parse(key)
        .orElseThrow(
            () ->
                new Refusal(
                    Exit.USAGE,
                    "there is no setting \""
                        + key
                        + "\". There are "
                        + Arrays.stream(Setting.values())
                            .map(Setting::key)
                            .collect(Collectors.joining(", "))
                        + "."));
  }
}
