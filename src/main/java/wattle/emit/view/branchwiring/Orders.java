package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.ToIntFunction;

/**
 * Finds the order with the fewest crossings: every order of the nets is tried, and for each the terminals of one fixture
 * after the other are put into their best order. Boxes with very many nets or terminals keep the order written.
 */
final class Orders {
  private static final int MOST = 5;

  private Orders() {}

  static Order best(BoxWiring box, ToIntFunction<Order> crossings) {
    Order best = null;
    int least = Integer.MAX_VALUE;
    for (List<Net> high : permutations(Order.first(box).high())) {
      Order order = Order.first(box).withHigh(high);
      int count = crossings.applyAsInt(order);
      for (int f = 0; f < box.fixtures().size() && count > 0; f++) {
        int fixture = f;
        order = better(order, order.above().get(f), (o, t) -> o.withAbove(fixture, t), crossings);
        order = better(order, order.below().get(f), (o, t) -> o.withBelow(fixture, t), crossings);
        count = crossings.applyAsInt(order);
      }
      if (count < least) {
        least = count;
        best = order;
      }
      if (least == 0) {
        break;
      }
    }
    return best;
  }

  private static Order better(
      Order from, List<Terminal> terminals, BiFunction<Order, List<Terminal>, Order> with, ToIntFunction<Order> crossings) {
    Order best = from;
    int least = crossings.applyAsInt(from);
    for (List<Terminal> other : permutations(terminals)) {
      Order order = with.apply(from, other);
      int count = crossings.applyAsInt(order);
      if (count < least) {
        least = count;
        best = order;
      }
    }
    return best;
  }

  private static <T> List<List<T>> permutations(List<T> things) {
    if (things.size() < 2 || things.size() > MOST) {
      return List.of(things);
    }
    List<List<T>> all = new ArrayList<>();
    for (int i = 0; i < things.size(); i++) {
      List<T> rest = new ArrayList<>(things);
      T first = rest.remove(i);
      for (List<T> others : permutations(rest)) {
        List<T> one = new ArrayList<>(List.of(first));
        one.addAll(others);
        all.add(one);
      }
    }
    return all;
  }
}
