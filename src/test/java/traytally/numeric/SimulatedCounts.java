package traytally.numeric;

import java.util.Random;

/** Seeded draws of the model: stints over blocks, two groupings, negative binomial counts. */
final class SimulatedCounts {
  final double intercept = 0.4;
  final double dispersion = 2.5;
  final double blockSd = 0.7;
  final double[] sds = {0.45, 0.3};
  final int[] levels;
  final int blocks;
  final int[] counts;
  final double[] logExposures;
  final int[] blockOf;
  final int[][] levelOf;
  final double[][] effects;

  SimulatedCounts(long seed, int blocks, int observations, int... levels) {
    Random random = new Random(seed);
    this.blocks = blocks;
    this.levels = levels.clone();
    this.counts = new int[observations];
    this.logExposures = new double[observations];
    this.blockOf = new int[observations];
    this.levelOf = new int[levels.length][observations];
    this.effects = new double[levels.length][];
    for (int g = 0; g < levels.length; g++) {
      double sd = sds[g];
      effects[g] = random.doubles(levels[g]).map(u -> sd * random.nextGaussian()).toArray();
    }
    double[] blockEffects =
        random.doubles(blocks).map(u -> blockSd * random.nextGaussian()).toArray();
    for (int i = 0; i < observations; i++) {
      blockOf[i] = random.nextInt(blocks);
      logExposures[i] = Math.log(0.3 + 2 * random.nextDouble());
      double eta = intercept + logExposures[i] + blockEffects[blockOf[i]];
      for (int g = 0; g < levels.length; g++) {
        levelOf[g][i] = random.nextInt(levels[g]);
        eta += effects[g][levelOf[g][i]];
      }
      counts[i] = count(random, Math.exp(eta));
    }
  }

  /** A Poisson draw (Knuth's product) of a gamma draw (Marsaglia &amp; Tsang 2000). */
  private int count(Random random, double mean) {
    double d = dispersion - 1.0 / 3;
    double gamma = -1;
    while (gamma < 0) {
      double x = random.nextGaussian();
      double v = Math.pow(1 + x / Math.sqrt(9 * d), 3);
      if (v > 0 && Math.log(random.nextDouble()) < x * x / 2 + d - d * v + d * Math.log(v)) {
        gamma = d * v;
      }
    }
    double limit = Math.exp(-mean * gamma / dispersion);
    int drawn = 0;
    for (double product = random.nextDouble(); product > limit; drawn++) {
      product *= random.nextDouble();
    }
    return drawn;
  }

  CountData data() {
    CountData data = CountData.of(counts, logExposures).blockedBy("day", blockOf, blocks);
    for (int g = 0; g < levels.length; g++) {
      data = data.groupedBy(name(g), levelOf[g], levels[g]);
    }
    return data;
  }

  static String name(int group) {
    return group == 0 ? "colour" : "body";
  }
}
