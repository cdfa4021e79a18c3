/**
 * What the angler owns: plastics, their colours, pieces, packs and money.
 *
 * <p>In: plain words and numbers. Out: checked values. Nothing here takes, returns or stores null.
 */
package traytally.plastic;
