package wattle.balance;

import java.util.List;
import wattle.model.Breaker;
import wattle.model.Leg;
import wattle.model.Slot;

/**
 * One thing to do in a panel: a breaker, or two half-size ones that share a slot, goes to another slot; or the wires of
 * a breaker of several poles change places on its terminals while it stays where it is.
 *
 * @param breakers what is moved; one, or two half-size ones
 * @param to for each breaker the new slot of each of its poles, in the order of its poles
 * @param legs the new leg of each pole of the first breaker
 */
public record Move(List<Breaker> breakers, List<List<Slot>> to, List<Leg> legs) {
  public Move {
    breakers = List.copyOf(breakers);
    to = to.stream().map(List::copyOf).toList();
    legs = List.copyOf(legs);
  }

  /** Whether only wires change places and the breaker stays. */
  public boolean onlyWires() {
    return breakers.get(0).poles().size() > 1;
  }

  /** What it feeds, or where it stands when it feeds nothing. */
  public String subject() {
    return String.join(" and ", breakers.stream().map(Move::nameOf).toList());
  }

  private static String nameOf(Breaker breaker) {
    if (breaker.target() instanceof Breaker.Target.ToBranch to) {
      return to.branch();
    }
    if (breaker.target() instanceof Breaker.Target.ToPanel to) {
      return to.panel();
    }
    return breaker.label().orElse(breaker.id().toString());
  }

  /** The slots it leaves: {@code 2+4}, or {@code 10a, 10b} for a pair. */
  public String fromText() {
    return String.join(", ", breakers.stream().map(b -> b.id().slotText()).toList());
  }

  /** The slots it comes to, in the same order. */
  public String toText() {
    return String.join(", ", to.stream().map(s -> String.join("+", s.stream().map(Slot::toString).toList())).toList());
  }

  /** The legs it leaves. */
  public String fromLegs() {
    return String.join("+", breakers.get(0).poles().stream().flatMap(p -> p.leg().stream()).map(Leg::name).toList());
  }

  /** The legs it comes to. */
  public String toLegs() {
    return String.join("+", legs.stream().map(Leg::name).toList());
  }
}
