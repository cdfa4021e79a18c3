package traytally.numeric;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A weighted sum of a model's intercept and effects; immutable.
 *
 * <p>A level never seen is one of its own each time it is named: two of them are independent.
 */
public final class Contrast {
  private record Term(String grouping, int level) {}

  private final double interceptWeight;
  private final Map<Term, Double> weights;
  private final List<Unseen> unseen;

  /** A level the data do not have. */
  record Unseen(String grouping, double weight) {}

  /** Takes the terms of a contrast one by one. */
  interface Terms {
    void add(String grouping, int level, double weight);
  }

  private Contrast(double interceptWeight, Map<Term, Double> weights, List<Unseen> unseen) {
    this.interceptWeight = interceptWeight;
    this.weights = weights;
    this.unseen = unseen;
  }

  /** The sum of nothing. */
  public static Contrast none() {
    return new Contrast(0, Map.of(), List.of());
  }

  /** The intercept alone, where a predicted log rate begins. */
  public static Contrast intercept() {
    return new Contrast(1, Map.of(), List.of());
  }

  /** Returns this sum with a level's effect added. */
  public Contrast plus(String grouping, int level, double weight) {
    Map<Term, Double> more = new LinkedHashMap<>(weights);
    more.merge(new Term(grouping, level), weight, Double::sum);
    return new Contrast(interceptWeight, more, unseen);
  }

  /** Returns this sum with the effect of a level never seen added. */
  public Contrast plusUnseen(String grouping, double weight) {
    List<Unseen> more = new ArrayList<>(unseen);
    more.add(new Unseen(grouping, weight));
    return new Contrast(interceptWeight, weights, more);
  }

  /** Returns this sum with another, times a factor, added; levels never seen stay apart. */
  public Contrast plus(Contrast other, double factor) {
    Map<Term, Double> more = new LinkedHashMap<>(weights);
    other.weights.forEach((term, weight) -> more.merge(term, factor * weight, Double::sum));
    List<Unseen> apart = new ArrayList<>(unseen);
    other.unseen.forEach(each -> apart.add(new Unseen(each.grouping(), factor * each.weight())));
    return new Contrast(interceptWeight + factor * other.interceptWeight, more, apart);
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

  List<Unseen> unseen() {
    return unseen;
  }
}
