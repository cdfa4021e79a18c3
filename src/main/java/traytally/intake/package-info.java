/**
 * People's own lists, read: home-made columns become counts, stints, plans and offers, with a
 * Problem for each row that could not be taken.
 *
 * <p>In: cells with their addresses, the book as it stands, the angler's options and the date. Out:
 * one entry for the book, how each column was read, and every problem with its place. Pure: nothing
 * here opens the book or writes anything. Nothing here takes, returns or stores null.
 */
package traytally.intake;
