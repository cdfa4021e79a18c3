/**
 * Cells, each with its address, out of the spreadsheets people keep.
 *
 * <p>In: the path of an .xlsx, .xlsm, .xls, .csv, .tsv or .txt; the kind is told from the content.
 * Out: sheets, rows and typed cells in the file's own order, one row at a time, or one {@link
 * traytally.sheet.UnreadableSheetException} that says in plain words what to do. Formulas are never
 * worked out, only their stored results are read. Nothing here knows what the cells are about.
 *
 * <p>Nothing here takes, returns or stores null.
 */
package traytally.sheet;
