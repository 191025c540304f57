package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import wattle.emit.media.table.SheetJson;
import wattle.emit.media.table.SheetText;
import wattle.emit.sheet.trial.TrialSheets;

/**
 * Any events together in one house: a trial is worked out, keeps Kirchhoff's laws, which the solver verifies and would
 * throw for, and shows no figure that is no number.
 */
class RandomTrials {
  private static final List<String> PLACES = List.of("hall.sw1", "hall.sw2", "hall.lamp", "den.lamp", "den.sw", "kitchen.c1", "kitchen.c2",
      "kitchen.range", "laundry.washer");
  private static final List<String> CONDUCTORS = List.of("hot", "other-hot", "neutral", "ground");
  private static final List<String> OHMS = List.of("0 ohm", "1e-6 ohm", "0.001 ohm", "0.5 ohm", "20 kohm", "9000000 kohm");
  private static final List<String> LOADS = List.of("kitchen.c1.upper", "kitchen.c1.lower", "kitchen.c2.upper", "kitchen.c2.lower",
      "laundry.washer", "hall.lamp", "kitchen.range");
  private static final List<String> FIGURES = List.of("0 A", "10 A", "2000 A", "1200 W", "8 kW power", "400 kW power", "5 A impedance",
      "12 ohm", "0 ohm", "500 VA power 0.7");

  private static <T> T any(Random random, List<T> list) {
    return list.get(random.nextInt(list.size()));
  }

  private static String event(Random random) {
    return switch (random.nextInt(14)) {
      case 0 -> any(random, LOADS) + " draws " + any(random, FIGURES);
      case 1 -> any(random, LOADS) + " draws " + any(random, FIGURES);
      case 2 ->
        any(random, List.of("hall.sw1", "hall.sw2", "den.sw", "laundry.washer", "kitchen.range")) + any(random, List.of(" on", " off"));
      case 3 -> "open " + any(random, CONDUCTORS) + " of counter at " + any(random, List.of("kitchen.c1", "kitchen.c2"));
      case 4 -> "open " + any(random, List.of("breaker P/1", "breaker P/2+4", "breaker P/5+7", "service neutral"));
      case 5 -> "loosen " + any(random, CONDUCTORS) + " at " + any(random, List.of("P", "kitchen.c1", "laundry.washer", "kitchen.range"))
          + " by " + plain(random);
      case 6 -> "lift ground at " + any(random, PLACES) + any(random, List.of("", " leaking " + plain(random)));
      case 7 -> "swap at " + any(random, PLACES);
      case 9 -> any(random, List.of("lose main", "open main P", "transfer P to yard.g", "transfer P to yard.store", "transfer P to off",
          "transfer P to utility"));
      case 10 -> any(random, List.of("yard.pv", "yard.store")) + " gives " + any(random, List.of("0 W", "3 kW", "5 kW", "900 kW"));
      case 11 ->
        any(random, List.of("yard.pv on", "yard.store on", "yard.g on", "yard.store draws 3 kW power", "yard.g off", "kitchen.c2 on"));
      case 8 -> "move counter to " + any(random, List.of("2+4", "2+6", "8+10", "4+2"));
      default -> fault(random);
    };
  }

  // A figure such as 1e-6 is written in full: the notation knows no powers of ten.
  private static String plain(Random random) {
    return any(random, OHMS).replace("1e-6", "0.000001");
  }

  private static String fault(Random random) {
    String from = any(random, CONDUCTORS);
    String to = any(random, CONDUCTORS.stream().filter(c -> !c.equals(from)).toList());
    return "fault " + from + " to " + to + " at " + any(random, List.of("P", "kitchen.c1", "kitchen.c2", "laundry.washer", "kitchen.range"))
        + any(random, List.of("", " through " + plain(random)));
  }

  @Property(tries = 400)
  void anythingAtOnceIsWorkedOut(@ForAll long seed) {
    Random random = new Random(seed);
    List<String> events = new ArrayList<>();
    for (int i = random.nextInt(6); i >= 0; i--) {
      events.add(event(random));
    }
    String text = String.join("\n", events);
    TrialResult result;
    try {
      result = Plans.runWithSources(text).value();
    } catch (RuntimeException e) {
      throw new AssertionError(text, e);
    }
    var sheets = TrialSheets.of(result, "t", Integer.MAX_VALUE);
    for (String shown : List.of(SheetText.plain(sheets), SheetText.csv(sheets), SheetJson.render(sheets))) {
      assertThat(shown).as(text).doesNotContain("NaN").doesNotContain("Infinity").doesNotContain("∞");
    }
  }
}
