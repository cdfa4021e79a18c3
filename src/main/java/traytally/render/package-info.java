/**
 * How a report is said: as a table for a terminal, csv, json or a workbook; and the blank sheets.
 *
 * <p>In: a {@link traytally.report.Report} and the {@link traytally.render.Look} wanted. Out: text
 * or bytes, the same for the same report on every run. Nothing here takes, returns or stores null.
 */
package traytally.render;
