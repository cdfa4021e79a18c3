/**
 * Anglers made up to test the model against a truth that is known: what each colour is really
 * worth, how they choose, what they lose. Nothing here takes, returns or stores null.
 */
package traytally.simulation;
