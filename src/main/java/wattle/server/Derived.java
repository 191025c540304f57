package wattle.server;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.figures.HouseFigures;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.memo.Once;
import wattle.trials.TrialResult.OutletReading;

/** What an editor asks of a plan only now and then: worked out when it is first asked for, once. */
final class Derived {
  private final Once<List<Occurrence>> names;
  private final Once<Map<Named, Occurrence>> declarations;
  private final Once<Map<String, OutletReading>> falls;

  Derived(Analysis analysis) {
    names = new Once<>(() -> List.copyOf(Occurrences.of(analysis)));
    declarations = new Once<>(this::byName);
    falls = new Once<>(() -> falls(analysis.compilation().figures()));
  }

  /** Outlets come worst first, so that the first of a branch is the one whose voltage falls most. */
  private static Map<String, OutletReading> falls(HouseFigures figures) {
    Map<String, OutletReading> worst = new HashMap<>();
    figures.trials().stated().outlets().forEach(o -> worst.putIfAbsent(o.branch(), o));
    return worst;
  }

  /** Where on a branch the voltage falls most with every stated load on; absent where nothing on it is connected. */
  Optional<OutletReading> fall(String branch) {
    return Optional.ofNullable(falls.get().get(branch));
  }

  private Map<Named, Occurrence> byName() {
    Map<Named, Occurrence> byName = new HashMap<>();
    names.get().stream().filter(Occurrence::declares).forEach(o -> byName.putIfAbsent(o.thing(), o));
    return byName;
  }

  /** Every place where a name stands. */
  List<Occurrence> names() {
    return names.get();
  }

  /** The name at an offset of a file; of two that meet there, the one that starts. */
  Optional<Occurrence> nameAt(Source source, int offset) {
    Optional<Occurrence> found = Optional.empty();
    for (Occurrence name : names.get()) {
      Span span = name.span();
      if (span.source() == source && span.start() <= offset && offset <= span.end()
          && (found.isEmpty() || span.start() > found.get().span().start())) {
        found = Optional.of(name);
      }
    }
    return found;
  }

  /** Where a thing is made; absent for one of the standard library, or one that is not there. */
  Optional<Occurrence> declaration(Named thing) {
    return Optional.ofNullable(declarations.get().get(thing));
  }

  /** All places of one thing. */
  List<Occurrence> of(Named thing) {
    List<Occurrence> found = new ArrayList<>();
    names.get().stream().filter(o -> o.thing().equals(thing)).forEach(found::add);
    return found;
  }
}
