/**
 * A whole box as text that any program reads, and back: a folder of CSV or one JSON file.
 *
 * <p>In: the rows of every table as the box hands them out. Out: files, and from files the rows
 * again. The layout is told in docs/formats.md. Nothing here takes, returns or stores null.
 */
package traytally.export;
