package wattle.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import wattle.finding.Finding;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/**
 * Puts in the place of patterns and placements what they stand for. Definitions are looked at first, then each place line is
 * read where it stands: its figures and names there, the pattern's names in the placement.
 *
 * <p>What a line stood for the last time is given again, as the very same trees, while the line, all patterns that it rests
 * on and the constants are the same. For one thread.
 */
public final class Expander {
  private Map<Tree.Item, Made> known = new IdentityHashMap<>();
  private Map<String, Quantity> knownConstants = Map.of();
  private boolean knownPlain = true;

  /**
   * A plan without patterns.
   *
   * @param items those that stand for themselves as the objects they were
   * @param placements names of the placements, each with its pattern
   * @param overridden of the placements those that have something of their own, each with the names of what differs
   * @param spoiled names of what could not be placed, their holes as written: that they are missing elsewhere says nothing
   */
  public record Expanded(List<Tree.Item> items, List<Finding> findings, Map<String, String> placements,
      Map<String, List<String>> overridden, Set<String> spoiled) {
    public Expanded {
      items = List.copyOf(items);
      findings = List.copyOf(findings);
      placements = Collections.unmodifiableMap(placements);
      overridden = Collections.unmodifiableMap(overridden);
      spoiled = Set.copyOf(spoiled);
    }
  }

  /** What one line stood for, nothing having been reported of it. */
  private record Made(List<Tree.Item> items, Expansion.Content content) {}

  /** @param most the most things that patterns may place */
  public Expanded expand(List<Tree.Item> items, int most) {
    if (items.stream().noneMatch(Expander::isShort)) {
      known = Map.of();
      return new Expanded(items, List.of(), Map.of(), Map.of(), Set.of());
    }
    Ledger ledger = new Ledger(most);
    for (Tree.Item item : items) {
      if (item instanceof Tree.Let let) {
        ledger.quietly(let.value()).ifPresent(v -> ledger.constants().putIfAbsent(let.name().text(), v));
      }
    }
    Map<String, Quantity> constants = Map.copyOf(ledger.constants());
    List<Tree.Item> instead = items.stream().filter(Tree.Overriding.class::isInstance).toList();
    // What an override makes of a placement is made anew: there are few of them.
    Map<Tree.Item, Made> before = constants.equals(knownConstants) && instead.isEmpty() && knownPlain ? known : Map.of();
    knownConstants = constants;
    knownPlain = instead.isEmpty();
    known = new IdentityHashMap<>();
    Overrides overrides = new Overrides(instead, ledger);
    Expansion expansion = new Expansion(ledger, Definitions.of(items, ledger).byName(), overrides);
    List<Tree.Item> out = new ArrayList<>();
    for (Tree.Item item : items) {
      if (item instanceof Tree.Pattern || item instanceof Tree.Overriding) {
        continue;
      }
      if (!isShort(item)) {
        out.add(item);
        continue;
      }
      Made made = before.get(item);
      if (made == null || !expansion.holds(made.content)) {
        made = make(item, expansion, ledger);
      } else {
        known.put(item, made);
      }
      out.addAll(made.items);
    }
    overrides.reportUnused(expansion.placements().keySet());
    return new Expanded(out, ledger.findings(), expansion.placements(), overrides.used(), ledger.spoiled());
  }

  private static boolean isShort(Tree.Item item) {
    return item instanceof Tree.Pattern || item instanceof Tree.Placing || item instanceof Tree.Overriding
        || item instanceof Tree.Panel panel && SupplyPlacer.isShort(panel);
  }

  private Made make(Tree.Item item, Expansion expansion, Ledger ledger) {
    int told = ledger.findings().size();
    int spoiled = ledger.spoiled().size();
    List<Tree.Item> items = new ArrayList<>();
    Map<String, Quantity> constants = Map.copyOf(ledger.constants());
    expansion.begin();
    if (item instanceof Tree.Placing placing) {
      expansion.place(placing, Frame.plan(ledger), List.of(), items);
    } else {
      items.add(new ThingPlacer(Frame.plan(ledger)).thing(item));
    }
    // A placement's own constants are no business of the next line's.
    ledger.constants().keySet().retainAll(constants.keySet());
    Made made = new Made(items, expansion.content());
    if (ledger.findings().size() == told && ledger.spoiled().size() == spoiled) {
      known.put(item, made);
    }
    return made;
  }
}
