package wattle.emit.document.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.finding.Citation;

/**
 * The steps of derivations, each once. Figures of a house share nearly all that they rest on: written out as trees, the
 * voltages of forty circuits alone would fill a page of many megabytes, of which one part in twenty is not a repetition.
 */
final class Steps {
  /**
   * One step.
   *
   * @param number from 1, in the order in which steps became known; inputs come before what is made of them
   * @param inputs in the order of the formula
   * @param size steps of the whole tree beneath it, itself included, repetitions counted
   */
  record Step(int number, Derivation derivation, List<Step> inputs, long size) {
    /** By number: to compare what is written would walk the whole tree beneath. */
    @Override
    public boolean equals(Object other) {
      return other instanceof Step step && step.number == number && step.derivation == derivation;
    }

    @Override
    public int hashCode() {
      return number;
    }
  }

  /** A step is known by what it says and by the steps that it rests on. */
  private record Key(
      String name, String symbol, Value value, Derivation.Basis basis, String formula, List<Integer> inputs, List<Citation> sources,
      String remark) {}

  private final Map<Key, Step> steps = new HashMap<>();
  private final Map<Derivation, Step> seen = new IdentityHashMap<>();

  /** The step that a derivation is; the same for equal ones. */
  Step of(Derivation derivation) {
    Step known = seen.get(derivation);
    if (known != null) {
      return known;
    }
    List<Step> inputs = new ArrayList<>();
    long size = 1;
    for (Derivation input : derivation.inputs()) {
      Step step = of(input);
      inputs.add(step);
      size += step.size();
    }
    Key key = new Key(
        derivation.name(), derivation.symbol(), derivation.value(), derivation.basis(), derivation.formula(),
        inputs.stream().map(Step::number).toList(), derivation.sources(), derivation.remark());
    Step step = steps.get(key);
    if (step == null) {
      step = new Step(steps.size() + 1, derivation, List.copyOf(inputs), size);
      steps.put(key, step);
    }
    seen.put(derivation, step);
    return step;
  }
}
