/**
 * What the coming trips will use up, what is about to run out, and what to buy where.
 *
 * <p>In: the book, today's date, what was asked. Out: a forecast for each plastic and a shopping
 * list, with every number a line rests on. Nothing here takes, returns or stores null.
 */
package traytally.restock;
