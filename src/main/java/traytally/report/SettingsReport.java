package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import traytally.ledger.Setting;
import traytally.ledger.Settings;
import traytally.report.Column.Kind;

/** The settings as they stand. */
public final class SettingsReport {
  private static final List<Column> COLUMNS =
      List.of(
          new Column("setting", "Setting", Kind.TEXT),
          new Column("value", "Value", Kind.TEXT),
          new Column("standard", "Standard", Kind.TEXT),
          new Column("", "Takes", Kind.TEXT));

  private SettingsReport() {}

  public static Report of(Settings settings, LocalDate asOf) {
    List<List<Value>> rows = new ArrayList<>();
    for (Setting setting : Setting.values()) {
      rows.add(
          List.of(
              Value.of(setting.key()),
              Value.of(settings.get(setting)),
              Value.of(setting.standard()),
              Value.of(setting.wantedWords())));
    }
    return new Report("settings", "Settings", asOf, List.of(), COLUMNS, rows, List.of(), List.of());
  }
}
