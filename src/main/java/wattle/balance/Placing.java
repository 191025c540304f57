package wattle.balance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wattle.model.Breaker;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Slot;

/** Gives each chosen unit its slots. */
final class Placing {
  private Placing() {}

  /** Gives each move its slots: first those that other moves leave, so that two breakers simply change places. */
  static List<Move> of(Panel panel, List<Search.Choice> choices, Map<Leg, List<Integer>> free) {
    Map<Leg, List<Integer>> open = new EnumMap<>(Leg.class);
    panel.legs().forEach(l -> open.put(l, new ArrayList<>()));
    for (Search.Choice choice : choices) {
      if (onePole(choice)) {
        open.get(choice.unit().breakers().get(0).poles().get(0).leg().orElseThrow()).add(numberOf(choice));
      }
    }
    open.forEach((leg, slots) -> slots.sort(null));
    free.forEach((leg, slots) -> open.get(leg).addAll(slots));
    Map<Integer, Move> bySlot = new TreeMap<>();
    choices.stream()
        .sorted(Comparator.comparingInt(Placing::numberOf))
        .forEach(choice -> bySlot.put(numberOf(choice), move(panel, choice, open)));
    return List.copyOf(bySlot.values());
  }

  private static boolean onePole(Search.Choice choice) {
    return choice.unit().breakers().get(0).poles().size() == 1;
  }

  private static int numberOf(Search.Choice choice) {
    return choice.unit().breakers().get(0).poles().get(0).slot().number();
  }

  private static Move move(Panel panel, Search.Choice choice, Map<Leg, List<Integer>> open) {
    List<Leg> legs = Arrays.stream(choice.option().legs()).mapToObj(panel.legs()::get).toList();
    List<Breaker> breakers = choice.unit().breakers();
    if (!onePole(choice)) {
      List<Slot> slots = legs.stream()
          .map(l -> breakers.get(0).poles().stream().filter(p -> p.leg().equals(Optional.of(l))).findFirst().orElseThrow().slot())
          .toList();
      return new Move(breakers, List.of(slots), legs);
    }
    int number = open.get(legs.get(0)).remove(0);
    return new Move(
        breakers, breakers.stream().map(b -> List.of(new Slot(number, b.poles().get(0).slot().half()))).toList(), legs);
  }
}
