/**
 * What is said: titled tables and notes, without a format.
 *
 * <p>In: results of the domain. Out: reports that {@code render} writes as a table, csv, json, xlsx
 * or a page. Nothing here takes, returns or stores null.
 */
package traytally.report;
