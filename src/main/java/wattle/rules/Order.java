package wattle.rules;

import wattle.quantity.Quantity;
import wattle.quantity.WireSize;
import wattle.syntax.Tree;

/** Compares figures and sizes. Figures that differ by less than one part in a thousand million are equal. */
final class Order {
  private static final double EQUAL = 1e-9;

  private Order() {}

  /** Null where either is not known. */
  static Boolean holds(Tree.Comparator comparator, Object left, Object right) {
    if (left instanceof Quantity x && right instanceof Quantity y) {
      double difference = x.si() - y.si();
      double slack = EQUAL * Math.max(Math.abs(x.si()), Math.abs(y.si()));
      return holds(comparator, Math.abs(difference) <= slack ? 0 : difference);
    }
    if (left instanceof WireSize x && right instanceof WireSize y) {
      return holds(comparator, x.compareTo(y));
    }
    return null;
  }

  private static boolean holds(Tree.Comparator comparator, double difference) {
    return switch (comparator) {
      case IS -> difference == 0;
      case IS_NOT -> difference != 0;
      case AT_MOST -> difference <= 0;
      case AT_LEAST -> difference >= 0;
      case ABOVE -> difference > 0;
      case BELOW -> difference < 0;
      case INCLUDES -> throw new AssertionError("figures include nothing");
    };
  }
}
