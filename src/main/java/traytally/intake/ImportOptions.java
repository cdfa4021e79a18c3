package traytally.intake;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the person said beside the file.
 *
 * @param kind what every sheet is to be taken for
 * @param map their header to our field; empty means to pass the column over
 * @param sheets the tabs to read; all if empty
 * @param countDate the day a box list was counted; today if not said
 * @param add whether a box list is new purchases
 * @param again whether purchases that were added before are to be added once more
 * @param strict whether one problem row stops all
 * @param onceOwned whether plastics a log names and the box does not are taken as used up
 * @param shareOut whether fish and losses told once for several plastics are shared out
 * @param dayFirst how to read dates such as 3/4/2026
 * @param lengthUnit the unit of bare lengths
 */
public record ImportOptions(
    Optional<ListKind> kind,
    Map<String, Optional<Field>> map,
    List<String> sheets,
    Optional<LocalDate> countDate,
    boolean add,
    boolean again,
    boolean strict,
    boolean onceOwned,
    boolean shareOut,
    Optional<Boolean> dayFirst,
    Optional<LengthUnit> lengthUnit) {
  /** Everything found out from the lists. */
  public static final ImportOptions NONE =
      new ImportOptions(
          Optional.empty(),
          Map.of(),
          List.of(),
          Optional.empty(),
          false,
          false,
          false,
          false,
          false,
          Optional.empty(),
          Optional.empty());

  /** The unit of a bare length. */
  public enum LengthUnit {
    MM,
    CM,
    IN;

    /** The unit in brackets behind {@code word}: {@code length (mm)}. */
    public static Optional<LengthUnit> behind(String word) {
      return ColumnHeader.of(word)
          .lengthUnit()
          .map(
              unit ->
                  switch (unit) {
                    case MM -> MM;
                    case CM -> CM;
                    case INCH -> IN;
                  });
    }
  }

  public ImportOptions {
    Map<String, Optional<Field>> folded = new LinkedHashMap<>();
    map.forEach((header, field) -> folded.put(ColumnHeader.of(header).folded(), field));
    map = Map.copyOf(folded);
    sheets = List.copyOf(sheets);
  }
}
