/**
 * The box on disk: one SQLite file, its schema, its safe copies.
 *
 * <p>In: entries to record. Out: the book as it stands. Nothing here takes, returns or stores null,
 * but for SQL's own NULL, which is read into an empty Optional at once.
 */
package traytally.store;
