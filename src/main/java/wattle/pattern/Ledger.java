package wattle.pattern;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import wattle.evaluate.Evaluator;
import wattle.finding.Finding;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** What all placements of one plan share: the constants known so far, what was noticed, and how much was placed. */
final class Ledger {
  private final Map<String, Quantity> constants = new HashMap<>();
  private final List<Finding> findings = new ArrayList<>();
  private final Set<String> spoiled = new HashSet<>();
  private final Evaluator quiet = new Evaluator(constants, f -> {});
  private final Evaluator loud = new Evaluator(constants, findings::add);
  private final int most;
  private int placed;

  /** @param most the most things that patterns may place */
  Ledger(int most) {
    this.most = most;
  }

  void report(Finding.Builder finding) {
    findings.add(finding.build());
  }

  /** Notes a name of something that was not placed, so that nobody complains of its absence. */
  void spoil(String name) {
    spoiled.add(name.substring(name.lastIndexOf('.') + 1));
  }

  List<Finding> findings() {
    return findings;
  }

  Set<String> spoiled() {
    return spoiled;
  }

  Map<String, Quantity> constants() {
    return constants;
  }

  /** A value that is reported elsewhere where it has none. */
  Optional<Quantity> quietly(Tree.Expression expression) {
    return quiet.valueOf(expression);
  }

  Evaluator evaluator() {
    return loud;
  }

  /** Tries something that is done once more in earnest, and tells nothing that it finds. */
  <T> T trying(Supplier<T> attempt) {
    int told = findings.size();
    T made = attempt.get();
    findings.subList(told, findings.size()).clear();
    return made;
  }

  int most() {
    return most;
  }

  /** Counts things that are placed; false once there are too many. */
  boolean place(long things) {
    placed = (int) Math.min(Integer.MAX_VALUE, placed + things);
    return placed <= most;
  }

  int placed() {
    return placed;
  }
}
