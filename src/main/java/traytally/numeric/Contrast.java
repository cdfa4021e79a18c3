package traytally.numeric;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A weighted sum of a model's intercept and effects; immutable.
 *
 * <p>A level the data do not have is known by a name: the same name is the same level, other names
 * are independent of it.
 */
public final class Contrast {
  private record Term(String grouping, int level) {}

  private final double interceptWeight;
  private final Map<Term, Double> weights;
  private final Map<Unseen, Double> unseen;

  /** A level the data do not have. */
  record Unseen(String grouping, String name) {}

  /** Takes the terms of a contrast one by one. */
  interface Terms {
    void add(String grouping, int level, double weight);
  }

  private Contrast(double interceptWeight, Map<Term, Double> weights, Map<Unseen, Double> unseen) {
    this.interceptWeight = interceptWeight;
    this.weights = weights;
    this.unseen = unseen;
  }

  /** The sum of nothing. */
  public static Contrast none() {
    return new Contrast(0, Map.of(), Map.of());
  }

  /** The intercept alone, where a predicted log rate begins. */
  public static Contrast intercept() {
    return new Contrast(1, Map.of(), Map.of());
  }

  /** The plain mean of some sums, at least one. */
  public static Contrast mean(List<Contrast> some) {
    double interceptWeight = 0;
    Map<Term, Double> weights = new LinkedHashMap<>();
    Map<Unseen, Double> unseen = new LinkedHashMap<>();
    for (Contrast each : some) {
      interceptWeight += each.interceptWeight / some.size();
      each.weights.forEach((term, w) -> weights.merge(term, w / some.size(), Double::sum));
      each.unseen.forEach((level, w) -> unseen.merge(level, w / some.size(), Double::sum));
    }
    return new Contrast(interceptWeight, weights, unseen);
  }

  /** Returns this sum with a level's effect added. */
  public Contrast plus(String grouping, int level, double weight) {
    Map<Term, Double> more = new LinkedHashMap<>(weights);
    more.merge(new Term(grouping, level), weight, Double::sum);
    return new Contrast(interceptWeight, more, unseen);
  }

  /** Returns this sum with the effect of a level never seen added. */
  public Contrast plusUnseen(String grouping, String name, double weight) {
    Map<Unseen, Double> more = new LinkedHashMap<>(unseen);
    more.merge(new Unseen(grouping, name), weight, Double::sum);
    return new Contrast(interceptWeight, weights, more);
  }

  /** Returns this sum with another, times a factor, added. */
  public Contrast plus(Contrast other, double factor) {
    Map<Term, Double> more = new LinkedHashMap<>(weights);
    other.weights.forEach((term, weight) -> more.merge(term, factor * weight, Double::sum));
    Map<Unseen, Double> others = new LinkedHashMap<>(unseen);
    other.unseen.forEach((level, weight) -> others.merge(level, factor * weight, Double::sum));
    return new Contrast(interceptWeight + factor * other.interceptWeight, more, others);
  }

  double interceptWeight() {
    return interceptWeight;
  }

  int size() {
    return weights.size();
  }

  void forEach(Terms terms) {
    weights.forEach((term, weight) -> terms.add(term.grouping(), term.level(), weight));
  }

  Map<Unseen, Double> unseen() {
    return unseen;
  }
}
