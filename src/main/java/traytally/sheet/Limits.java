package traytally.sheet;

/**
 * How large a file may be. Each bound lies well above what a person's own list needs and low enough
 * for a 512 MB heap and 20 seconds; past one the file is refused, never read in part.
 *
 * @param fileBytes size on disk. A million rows of text take some 60 MB
 * @param unfoldedBytes all parts of an .xlsx together once unpacked. 100,000 rows of 12 columns
 *     take some 50 MB, and this much is parsed in some 7 s of a slow processor (measured)
 * @param unfoldRatio unpacked to packed size of one part, beyond {@link #unfoldFreely}. Dense
 *     sheets reach 20 to 60 (measured); deflate cannot pass 1032 (zlib's technical notes)
 * @param unfoldFreely unpacked bytes up to which the ratio does not matter, being cheap to hold
 * @param sharedCharacters characters in an .xlsx's table of texts, the one thing held in memory
 * @param cellCharacters characters in a cell: 32,767 in every spreadsheet program (ECMA-376 leaves
 *     it open; Microsoft's published specifications and limits)
 * @param givenCharacters characters over all cells, where a text used twice counts twice: a small
 *     file can point at one long text a million times
 * @param lineCharacters characters in one record of a text file
 * @param rows the rows a sheet can show: 1,048,576 in .xlsx
 * @param columns the columns a sheet can show: 16,384 in .xlsx
 * @param cells sum over all rows of the column last filled, so one stray cell at XFD counts 16,384
 * @param merges merged areas of a sheet; a list merged that often was made by no person
 * @param sheets tabs of a workbook
 * @param parts files inside an .xlsx
 * @param styles cell styles; a spreadsheet program allows 65,490 (Microsoft, as above)
 */
public record Limits(
    long fileBytes,
    long unfoldedBytes,
    int unfoldRatio,
    long unfoldFreely,
    long sharedCharacters,
    int cellCharacters,
    long givenCharacters,
    int lineCharacters,
    int rows,
    int columns,
    long cells,
    int merges,
    int sheets,
    int parts,
    int styles) {

  /** The bounds in force unless a test asks for others. */
  public static final Limits DEFAULT =
      new Limits(
          128L << 20,
          256L << 20,
          200,
          64L << 20,
          48L << 20,
          32_767,
          200_000_000L,
          1 << 20,
          1 << 20,
          1 << 14,
          20_000_000L,
          10_000,
          1_000,
          20_000,
          65_490);
}
