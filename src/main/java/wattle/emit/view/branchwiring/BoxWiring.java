package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.ConductorUse;
import wattle.model.Role;
import wattle.model.Section;

/**
 * What is in one box, or in the panel that a branch starts at, and what is joined there.
 *
 * @param boxed whether anything is around it; false for a joint in the open
 * @param arriving the cable from the side of the panel; absent in the panel
 * @param leaving the cables onward
 * @param nets in the order in which the cables and fixtures bring them
 * @param loose conductors that are joined to nothing
 */
record BoxWiring(
    String title,
    List<String> facts,
    List<String> notes,
    boolean boxed,
    List<Fixture> fixtures,
    Optional<Section> arriving,
    List<Section> leaving,
    List<Net> nets,
    List<Net.Conductor> loose) {
  BoxWiring {
    facts = List.copyOf(facts);
    notes = List.copyOf(notes);
    fixtures = List.copyOf(fixtures);
    leaving = List.copyOf(leaving);
    nets = List.copyOf(nets);
    loose = List.copyOf(loose);
  }

  /** Joins what does the same. */
  static BoxWiring joined(
      String title, List<String> facts, List<String> notes, boolean boxed, List<Fixture> fixtures, Optional<Section> arriving,
      List<Section> leaving) {
    Map<Net.Key, List<Net.Conductor>> conductors = new LinkedHashMap<>();
    Set<Net.Key> keys = new LinkedHashSet<>();
    List<Net.Conductor> loose = new ArrayList<>();
    Set<Net.Key> onward = new LinkedHashSet<>();
    fixtures.forEach(f -> f.terminals().forEach(t -> t.net().filter(Net.Key::onward).ifPresent(onward::add)));
    List<Section> cables = new ArrayList<>();
    arriving.ifPresent(cables::add);
    cables.addAll(leaving);
    for (int i = 0; i < cables.size(); i++) {
      int cable = arriving.isPresent() ? i : i + 1;
      for (ConductorUse use : uses(cables.get(i))) {
        Net.Conductor end = new Net.Conductor(cable, use);
        if (use.role() instanceof Role.Spare) {
          loose.add(end);
          continue;
        }
        Net.Key key = new Net.Key(use.role(), cable > 0 && onward.contains(new Net.Key(use.role(), true)));
        conductors.computeIfAbsent(key, k -> new ArrayList<>()).add(end);
        keys.add(key);
      }
    }
    fixtures.forEach(f -> f.terminals().forEach(t -> t.net().ifPresent(keys::add)));
    List<Net> nets = new ArrayList<>();
    for (Net.Key key : keys) {
      List<Terminal> terminals = fixtures.stream().flatMap(f -> f.terminals().stream()).filter(t -> t.net().equals(Optional.of(key)))
          .toList();
      List<Net.Conductor> ends = conductors.getOrDefault(key, List.of());
      boolean lead = terminals.stream().anyMatch(t -> t.make() == Terminal.Make.LEAD);
      Net net = new Net(key, ends, terminals.size(), lead);
      if (net.ends() > 1) {
        nets.add(net);
      } else {
        loose.addAll(ends);
      }
    }
    return new BoxWiring(title, facts, notes, boxed, fixtures, arriving, leaving, nets, loose);
  }

  /** The same with one of the leaving cables before the others. */
  BoxWiring withFirst(int cable) {
    List<Section> other = new ArrayList<>(leaving);
    other.add(0, other.remove(cable));
    return joined(title, facts, notes, boxed, fixtures, arriving, other);
  }

  /** What each wire does; where that could not be derived, every wire as one that is joined to nothing. */
  private static List<ConductorUse> uses(Section section) {
    if (!section.conductors().isEmpty()) {
      return section.conductors();
    }
    return section.wiring().wires().stream().map(w -> new ConductorUse(w, new Role.Spare(), false)).toList();
  }

  /** Whether a wire comes to a terminal at all. */
  boolean isJoined(Terminal terminal) {
    return terminal.net().isPresent() && nets.stream().anyMatch(n -> n.key().equals(terminal.net().get()));
  }
}
