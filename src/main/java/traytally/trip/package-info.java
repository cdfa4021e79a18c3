/**
 * Days on the water: trips made, the stints within them, trips to come.
 *
 * <p>In: plastics and counts of fish. Out: checked values. Nothing here takes, returns or stores
 * null.
 */
package traytally.trip;
