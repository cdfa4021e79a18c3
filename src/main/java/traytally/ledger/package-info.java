/**
 * The book: movements of pieces that are never edited, the facts they came with, and what follows
 * from them.
 *
 * <p>In: movements, counts and stints as they were recorded. Out: stock by plastic at any date, and
 * the movements that a new count or stint calls for. Pure arithmetic; nothing here takes, returns
 * or stores null.
 */
package traytally.ledger;
