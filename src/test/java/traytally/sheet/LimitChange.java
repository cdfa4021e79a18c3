package traytally.sheet;

/** The usual limits with one made small enough for a test to reach. */
final class LimitChange {
  private long fileBytes = Limits.DEFAULT.fileBytes();
  private long unfoldedBytes = Limits.DEFAULT.unfoldedBytes();
  private long sharedCharacters = Limits.DEFAULT.sharedCharacters();
  private int sheets = Limits.DEFAULT.sheets();
  private int parts = Limits.DEFAULT.parts();
  private int styles = Limits.DEFAULT.styles();

  LimitChange fileBytes(long changed) {
    fileBytes = changed;
    return this;
  }

  LimitChange unfoldedBytes(long changed) {
    unfoldedBytes = changed;
    return this;
  }

  LimitChange sharedCharacters(long changed) {
    sharedCharacters = changed;
    return this;
  }

  LimitChange sheets(int changed) {
    sheets = changed;
    return this;
  }

  LimitChange parts(int changed) {
    parts = changed;
    return this;
  }

  LimitChange styles(int changed) {
    styles = changed;
    return this;
  }

  Limits limits() {
    Limits usual = Limits.DEFAULT;
    return new Limits(
        fileBytes,
        unfoldedBytes,
        usual.unfoldRatio(),
        usual.unfoldFreely(),
        sharedCharacters,
        usual.cellCharacters(),
        usual.givenCharacters(),
        usual.lineCharacters(),
        usual.rows(),
        usual.columns(),
        usual.cells(),
        usual.merges(),
        sheets,
        parts,
        styles);
  }
}
