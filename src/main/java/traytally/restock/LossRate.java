package traytally.restock;

/**
 * How fast a plastic leaves the tray on a water.
 *
 * @param perHour pieces lost and worn in a rod-hour on a day not yet seen: exp(mean + v/2) × scale
 * @param logMean mean of the log rate
 * @param logVariance v, variance of the log rate: what is not known of it, and the day's luck
 * @param dayVariance the part of it that each day draws anew
 * @param scale what the level was multiplied by, so that it fits the log's own losses
 */
public record LossRate(
    double perHour, double logMean, double logVariance, double dayVariance, double scale) {}
