/**
 * What a log says of colours: how much each out-fishes the others on the same day, and how sure
 * that is.
 *
 * <p>In: stints. Out: trust and standing by colour, plastic or body, each with its evidence.
 * Nothing here takes, returns or stores null.
 */
package traytally.performance;
