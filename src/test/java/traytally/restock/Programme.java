package traytally.restock;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * The choice of a basket as an integer programme for ojAlgo: of each plastic's ways one is chosen;
 * a shop with goods is paid its postage or is free, then with goods up to its threshold at least.
 */
final class Programme {
  private final ExpressionsBasedModel model = new ExpressionsBasedModel();
  private final Market market;
  private final double mostGoods; // cents at one shop, more than any best basket has
  private final Map<Name, List<Expression>> shops = new HashMap<>(); // what limits their goods
  private final Expression cost = model.newExpression("cost"); // goods and postage

  private Programme(Market market, double mostGoods) {
    this.market = market;
    this.mostGoods = mostGoods;
  }

  /**
   * The most takes that a basket within the budget can save.
   *
   * @param ways to buy each plastic
   */
  static double most(
      Market market,
      Money budget,
      Map<Plastic, Basket.Gain> gains,
      Map<Plastic, List<List<Purchase>>> ways) {
    Programme programme = new Programme(market, budget.cents());
    gains.forEach(
        (plastic, gain) -> {
          Expression one = programme.model.newExpression(plastic.toString()).upper(1);
          for (List<Purchase> way : ways.getOrDefault(plastic, List.of())) {
            int pieces = way.stream().mapToInt(purchase -> purchase.pieces().count()).sum();
            if (pieces > 0) {
              one.set(programme.way(way).weight(gain.worth().applyAsDouble(pieces)), 1);
            }
          }
        });
    programme.cost.upper(budget.cents());
    Optimisation.Result result = programme.model.maximise();
    if (!result.getState().isOptimal()) {
      throw new IllegalStateException("not solved: " + result.getState());
    }
    return result.getValue();
  }

  /**
   * What is needed, at the least cost that the solver finds.
   *
   * @param ways to buy each plastic
   */
  static SortedMap<Plastic, List<Purchase>> cheapest(
      Market market, Map<Plastic, Integer> need, Map<Plastic, List<List<Purchase>>> ways) {
    double mostGoods = 0;
    for (List<List<Purchase>> own : ways.values()) {
      mostGoods += own.stream().mapToLong(Programme::cents).max().orElse(0);
    }
    Programme programme = new Programme(market, mostGoods);
    Map<Variable, List<Purchase>> chosen = new HashMap<>();
    need.forEach(
        (plastic, pieces) -> {
          Expression one = programme.model.newExpression(plastic.toString()).level(1);
          for (List<Purchase> way : ways.getOrDefault(plastic, List.of())) {
            if (way.stream().mapToInt(purchase -> purchase.pieces().count()).sum() >= pieces) {
              Variable variable = programme.way(way);
              chosen.put(variable, way);
              one.set(variable, 1);
            }
          }
        });
    programme.cost.weight(1);
    Optimisation.Result result = programme.model.minimise();
    if (!result.getState().isOptimal()) {
      throw new IllegalStateException("not solved: " + result.getState());
    }
    SortedMap<Plastic, List<Purchase>> bought = new TreeMap<>();
    chosen.forEach(
        (variable, way) -> {
          if (result.doubleValue(programme.model.indexOf(variable)) > 0.5) {
            bought.put(way.get(0).offer().plastic(), way);
          }
        });
    return bought;
  }

  private static long cents(List<Purchase> way) {
    return way.stream().mapToLong(purchase -> purchase.lineTotal().cents()).sum();
  }

  private Variable way(List<Purchase> way) {
    Variable chosen = model.newVariable(way.toString()).binary();
    long cents = 0;
    for (Purchase purchase : way) {
      long goods = purchase.lineTotal().cents();
      cents += goods;
      for (Expression limit : shops.computeIfAbsent(purchase.offer().shop(), this::shop)) {
        limit.add(chosen, goods);
      }
    }
    cost.set(chosen, cents);
    return chosen;
  }

  private List<Expression> shop(Name shop) {
    Variable paid = model.newVariable(shop + " paid").binary();
    Variable free = model.newVariable(shop + " free").binary();
    cost.set(paid, market.postage(shop, Money.zero(market.currency())).cents());
    Expression atMost = model.newExpression(shop + " at most").upper(0);
    Expression atLeast = model.newExpression(shop + " at least").lower(0);
    atMost.set(paid, -mostGoods).set(free, -mostGoods);
    atLeast.set(free, -market.freeFrom(shop).orElseThrow().cents());
    return List.of(atMost, atLeast);
  }
}
