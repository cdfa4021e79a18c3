/**
 * The statistical engine: what the chosen numeric libraries lack. Counts, exposures and numbered
 * groupings come in; fitted effects, their joint uncertainty and count distributions go out. It
 * knows nothing of lures. Nothing here takes, returns or stores null.
 */
package traytally.numeric;
