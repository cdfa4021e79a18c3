package traytally.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The fits without priors against glmmTMB 1.1.5 and lme4 1.1-31 (R 4.2.2); the calls are in {@code
 * reference/fit.R} and {@code reference/published.R}.
 */
class ReferenceFitTest {
  private static final double LOG_LIKELIHOOD = 1e-3;
  private static final double EFFECT = 1e-2;

  /** glmmTMB below this is at the boundary, where any value below {@link #NEAR_ZERO} agrees. */
  private static final double BOUNDARY = 0.01;

  private static final double NEAR_ZERO = 0.05;

  @ParameterizedTest
  @ValueSource(strings = {"stints-a", "stints-b", "stints-large"})
  void plainStintsAgreeWithGlmmTmb(String name) {
    agrees(name, "plain", ReferenceLog.stints(name, "colour", "body"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"stints-a", "stints-b"})
  void stintsWithContextAgreeWithGlmmTmb(String name) {
    agrees(
        name,
        "context",
        ReferenceLog.stints(name, "body", "tone", "colour", "tone:species", "colour:species"));
  }

  private static void agrees(String name, String model, CountData data) {
    MixedCountFit fit = MixedCountModel.negativeBinomial().fit(data);
    ReferenceTable hyper = ReferenceTable.read(name + "-" + model + "-hyper.csv");
    assertTrue(fit.converged());
    assertEquals(hyper.value("logLik"), fit.logLikelihood(), LOG_LIKELIHOOD);
    assertEquals(hyper.value("intercept"), fit.intercept(), EFFECT);
    double logDispersion = Math.log(fit.dispersion().orElseThrow());
    assertEquals(Math.log(hyper.value("dispersion")), logDispersion, EFFECT);
    fit.sds().forEach((it, sd) -> sdAgrees(hyper.value("sd_" + it + ".(Intercept)"), sd));
    ReferenceTable effects = ReferenceTable.read(name + "-" + model + "-effects.csv");
    ReferenceTable log = ReferenceTable.read(name + ".csv");
    for (Grouping grouping : data.groupings()) {
      double[] ours = fit.effects(grouping.name());
      List<String> levels = Levels.of(log.joined(grouping.name().split(":"))).names();
      for (int level = 0; level < ours.length; level++) {
        assertEquals(effects.value(grouping.name(), levels.get(level)), ours[level], EFFECT);
      }
    }
  }

  private static void sdAgrees(double theirs, double ours) {
    if (theirs < BOUNDARY) {
      assertTrue(ours < NEAR_ZERO, "sd " + ours);
    } else {
      assertEquals(theirs, ours, EFFECT);
    }
  }

  /** Thall &amp; Vail, Biometrics 46, 1990, 657–671: seizures of 59 patients. */
  @ParameterizedTest
  @CsvSource({
    "epil-nbinom2, glmmTMB 1.1.5",
    "epil-poisson, glmmTMB 1.1.5",
    "epil-poisson, lme4 1.1-31"
  })
  void seizuresAgreeWithPublishedSoftware(String fitted, String software) {
    ReferenceTable table = ReferenceTable.read("epil.csv");
    double[] logBase =
        Arrays.stream(table.numbers("base")).map(base -> Math.log(base / 4)).toArray();
    Levels subject = Levels.of(table.texts("subject"));
    CountData counts = CountData.of(table.integers("y"), logBase);
    MixedCountModel model =
        fitted.equals("epil-nbinom2")
            ? MixedCountModel.negativeBinomial()
            : MixedCountModel.poisson();
    for (CountData data :
        new CountData[] {
          counts.blockedBy("subject", subject.of(), subject.size()),
          counts.groupedBy("subject", subject.of(), subject.size())
        }) {
      MixedCountFit fit = model.fit(data);
      assertTrue(fit.converged());
      assertEquals(published(fitted, software, "logLik"), fit.logLikelihood(), LOG_LIKELIHOOD);
      assertEquals(published(fitted, software, "intercept"), fit.intercept(), EFFECT);
      assertEquals(published(fitted, software, "sd_subject"), fit.sd("subject"), EFFECT);
    }
  }

  /** Elston et al., Parasitology 122, 2001, 563–569: ticks on grouse chicks. */
  @Test
  void ticksAgreeWithGlmmTmb() {
    MixedCountFit fit = MixedCountModel.negativeBinomial().fit(ticks("BROOD", "LOCATION", "YEAR"));
    assertTrue(fit.converged());
    assertEquals(
        published("grouseticks-nbinom2", "glmmTMB 1.1.5", "logLik"),
        fit.logLikelihood(),
        LOG_LIKELIHOOD);
    assertEquals(
        published("grouseticks-nbinom2", "glmmTMB 1.1.5", "intercept"), fit.intercept(), EFFECT);
    assertEquals(
        published("grouseticks-nbinom2", "glmmTMB 1.1.5", "dispersion"),
        fit.dispersion().orElseThrow(),
        EFFECT);
    assertEquals(
        published("grouseticks-nbinom2", "glmmTMB 1.1.5", "sd_BROOD"), fit.sd("BROOD"), EFFECT);
    assertEquals(
        published("grouseticks-nbinom2", "glmmTMB 1.1.5", "sd_LOCATION"),
        fit.sd("LOCATION"),
        EFFECT);
    assertEquals(
        published("grouseticks-nbinom2", "glmmTMB 1.1.5", "sd_YEAR"), fit.sd("YEAR"), EFFECT);
  }

  /**
   * lme4 warned of near non-identifiability and stopped just short of the maximum: the log
   * likelihood agrees at its parameters, and the fit finds one a little higher.
   */
  @Test
  void ticksOfEachChickAgreeWithLme4() {
    CountData data = ticks("INDEX", "BROOD", "LOCATION");
    String[] quantities = {"intercept", "sd_INDEX", "sd_BROOD", "sd_LOCATION"};
    double[] theirs =
        Arrays.stream(quantities).mapToDouble(ReferenceFitTest::ticksOfEachChick).toArray();
    for (int sd = 1; sd < theirs.length; sd++) {
      theirs[sd] = Math.log(theirs[sd]);
    }
    double logLik = ticksOfEachChick("logLik");
    MarginalPosterior posterior = new MarginalPosterior(data, false, Optional.empty(), Hessian::of);
    assertEquals(-logLik, posterior.evaluate(theirs, new double[4]), LOG_LIKELIHOOD);
    MixedCountFit fit = MixedCountModel.poisson().fit(data);
    assertTrue(fit.converged());
    assertTrue(fit.logLikelihood() > logLik);
    assertEquals(logLik, fit.logLikelihood(), 5 * LOG_LIKELIHOOD);
  }

  private static double ticksOfEachChick(String quantity) {
    return published("grouseticks-poisson-index", "lme4 1.1-31", quantity);
  }

  private static double published(String... leading) {
    return ReferenceTable.read("published-fits.csv").value(leading);
  }

  private static CountData ticks(String block, String... groupings) {
    ReferenceTable table = ReferenceTable.read("grouseticks.csv");
    Levels blocks = Levels.of(table.texts(block));
    CountData data =
        CountData.of(table.integers("TICKS"), new double[table.size()])
            .blockedBy(block, blocks.of(), blocks.size());
    for (String grouping : groupings) {
      Levels levels = Levels.of(table.texts(grouping));
      data = data.groupedBy(grouping, levels.of(), levels.size());
    }
    return data;
  }
}
