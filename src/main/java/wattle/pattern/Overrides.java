package wattle.pattern;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.syntax.Tree;

/**
 * What single placements have instead of what their pattern has. A thing of the same kind and name takes the place of the pattern's;
 * of a room the boxes and devices, of a panel the slot lines and settings, of a dwelling the facts that are stated, one by one. What has
 * no namesake is there beside the rest.
 */
final class Overrides {
  private final Map<String, Tree.Overriding> byPlacement = new LinkedHashMap<>();
  private final Map<String, List<String>> used = new LinkedHashMap<>();
  private final Ledger ledger;

  Overrides(List<Tree.Item> items, Ledger ledger) {
    this.ledger = ledger;
    for (Tree.Item item : items) {
      if (item instanceof Tree.Overriding t) {
        Tree.Overriding first = byPlacement.putIfAbsent(t.placement().text(), t);
        if (first != null) {
          ledger.report(
              Finding.error(Mistake.NAME_TWICE, "two overrides are of '" + t.placement() + "'")
                  .at(t.placement().span(), "the second")
                  .with(first.placement().span(), "the first")
                  .because("The second was left out.")
                  .fix("write both in one block"));
        }
      }
    }
  }

  /** Placements that have something of their own, each with the names of what differs. */
  Map<String, List<String>> used() {
    return used;
  }

  /** Says which of them name no placement. */
  void reportUnused(Set<String> placements) {
    KnownNames known = new KnownNames(placements);
    byPlacement.forEach((name, t) -> {
      if (!used.containsKey(name) && !ledger.spoiled().contains(name.substring(name.lastIndexOf('.') + 1))) {
        Finding.Builder finding = Finding.error(Mistake.NAME_UNKNOWN, "no placement is called '" + name + "'")
            .at(t.placement().span(), "the whole name of a placement is expected here, as in floor2.flat1")
            .because("This override has no effect.");
        known.near(name).forEach(n -> finding.fix(Fix.safe("write " + n, t.placement().span(), n)));
        ledger.report(finding);
      }
    });
  }

  /** A pattern as it is in one placement. */
  Tree.Pattern of(Tree.Pattern pattern, String placement) {
    Tree.Overriding own = byPlacement.get(placement);
    if (own == null) {
      return pattern;
    }
    Set<String> changed = new java.util.LinkedHashSet<>();
    List<Tree.Item> items = without(pattern.items(), own.without(), changed);
    for (Tree.Item item : own.items()) {
      changed.addAll(new Changes(pattern.name().text()).of(item));
      put(items, item);
    }
    used.put(placement, List.copyOf(changed));
    return new Tree.Pattern(pattern.name(), pattern.parameters(), pattern.whole(), items, pattern.span());
  }

  /** Names of what an item of an override changes, as somebody would say them. */
  private record Changes(String pattern) {
    List<String> of(Tree.Item item) {
      if (item instanceof Tree.Room room) {
        List<String> names = Stream
            .concat(room.boxes().stream().map(b -> b.name().text()), room.devices().stream().map(d -> d.name().text()))
            .map(n -> room.name() + "." + n).toList();
        return names.isEmpty() ? List.of("room " + room.name()) : names;
      }
      if (item instanceof Tree.Panel panel) {
        List<String> fed = panel.statements().stream()
            .map(s -> s instanceof Tree.Slot slot
                ? "slot " + slot.slots().text()
                : s instanceof Tree.Main ? "main" : "settings of the panel")
            .toList();
        return fed.isEmpty() ? List.of("feeder") : fed;
      }
      return Definitions.declared(item).map(n -> List.of(n.text().equals(pattern) ? "dwelling" : n.text())).orElse(List.of());
    }
  }

  // ---- What is left out

  private List<Tree.Item> without(List<Tree.Item> items, List<Tree.Word> names, Set<String> changed) {
    List<Tree.Item> left = new ArrayList<>(items);
    for (Tree.Word name : names) {
      List<Tree.Item> fewer = new ArrayList<>();
      for (Tree.Item item : left) {
        kept(item, name.text()).ifPresent(fewer::add);
      }
      if (fewer.equals(left)) {
        ledger.report(
            Finding.error(Mistake.NAME_UNKNOWN, "the pattern has no '" + name + "'")
                .at(name.span(), "a branch, a room or a device such as kitchen.range is expected here"));
      } else {
        changed.add("without " + name);
      }
      left = fewer;
    }
    return left;
  }

  /** An item without what has a name: a branch goes with its slot line. */
  private static Optional<Tree.Item> kept(Tree.Item item, String name) {
    if (item instanceof Tree.Panel panel) {
      List<Tree.PanelStatement> statements = panel.statements().stream()
          .filter(s -> !(s instanceof Tree.Slot slot) || slot.words().stream().noneMatch(w -> w.text().equals(name))).toList();
      return statements.size() == panel.statements().size() ? Optional.of(panel) : Optional.of(with(panel, statements));
    }
    if (Definitions.declared(item).filter(d -> d.text().equals(name)).isPresent()) {
      return Optional.empty();
    }
    if (item instanceof Tree.Room room && name.startsWith(room.name() + ".")) {
      String inside = name.substring(room.name().text().length() + 1);
      return Optional.of(
          new Tree.Room(
              room.name(), room.label(), room.kind(), room.facts(), room.status(),
              room.boxes().stream().filter(b -> !b.name().text().equals(inside))
                  .map(b -> with(b, devices(b.devices(), inside))).toList(),
              devices(room.devices(), inside), room.span()));
    }
    return Optional.of(item);
  }

  private static List<Tree.Device> devices(List<Tree.Device> devices, String without) {
    return devices.stream().filter(d -> !d.name().text().equals(without)).toList();
  }

  // ---- What is there instead

  private static void put(List<Tree.Item> items, Tree.Item own) {
    Optional<Tree.Word> name = Definitions.declared(own);
    for (int i = 0; i < items.size(); i++) {
      Tree.Item item = items.get(i);
      if (item.getClass() == own.getClass() && (name.isPresent() || own instanceof Tree.Dwelling)
          && text(name).equals(text(Definitions.declared(item)))) {
        items.set(i, merged(item, own));
        return;
      }
    }
    items.add(own);
  }

  private static String text(Optional<Tree.Word> name) {
    return name.map(Tree.Word::text).orElse("");
  }

  private static Tree.Item merged(Tree.Item item, Tree.Item own) {
    if (item instanceof Tree.Room room) {
      return room(room, (Tree.Room) own);
    }
    if (item instanceof Tree.Panel panel) {
      return panel(panel, (Tree.Panel) own);
    }
    if (item instanceof Tree.Dwelling dwelling) {
      Tree.Dwelling stated = (Tree.Dwelling) own;
      return new Tree.Dwelling(
          dwelling.name(), stated.label().or(dwelling::label), stated.panels().isEmpty() ? dwelling.panels() : stated.panels(),
          facts(dwelling.facts(), stated.facts()), dwelling.span());
    }
    return own;
  }

  private static Tree.Room room(Tree.Room room, Tree.Room own) {
    Set<String> replaced = new HashSet<>();
    own.devices().forEach(d -> replaced.add(d.name().text()));
    own.boxes().forEach(b -> {
      replaced.add(b.name().text());
      b.devices().forEach(d -> replaced.add(d.name().text()));
    });
    List<Tree.Box> boxes = new ArrayList<>();
    Map<String, Tree.Device> inBoxes = new LinkedHashMap<>();
    own.devices().forEach(d -> inBoxes.put(d.name().text(), d));
    Set<String> placed = new HashSet<>();
    for (Tree.Box box : room.boxes()) {
      if (own.boxes().stream().noneMatch(b -> b.name().text().equals(box.name().text()))) {
        List<Tree.Device> devices = new ArrayList<>();
        for (Tree.Device device : box.devices()) {
          Tree.Device instead = inBoxes.get(device.name().text());
          if (instead != null) {
            placed.add(device.name().text());
            devices.add(instead);
          } else if (!replaced.contains(device.name().text())) {
            devices.add(device);
          }
        }
        boxes.add(with(box, devices));
      }
    }
    boxes.addAll(own.boxes());
    List<Tree.Device> devices = new ArrayList<>(room.devices().stream().filter(d -> !replaced.contains(d.name().text())).toList());
    own.devices().stream().filter(d -> !placed.contains(d.name().text())).forEach(devices::add);
    return new Tree.Room(
        room.name(), own.label().or(room::label), own.kind().or(room::kind), facts(room.facts(), own.facts()),
        own.status().or(room::status), boxes, devices, room.span());
  }

  private static Tree.Box with(Tree.Box box, List<Tree.Device> devices) {
    return new Tree.Box(box.name(), box.gangs(), box.amounts(), box.words(), box.status(), devices, box.span());
  }

  private static List<Tree.Fact> facts(List<Tree.Fact> facts, List<Tree.Fact> own) {
    Set<String> stated = new HashSet<>();
    own.forEach(f -> stated.add(f.name().text()));
    return Stream.concat(facts.stream().filter(f -> !stated.contains(f.name().text())), own.stream()).toList();
  }

  private static Tree.Panel panel(Tree.Panel panel, Tree.Panel own) {
    List<Tree.PanelStatement> statements = new ArrayList<>(panel.statements());
    for (Tree.PanelStatement statement : own.statements()) {
      int at = -1;
      for (int i = statements.size() - 1; i >= 0; i--) {
        if (givesWay(statements.get(i), statement)) {
          statements.remove(i);
          at = i;
        }
      }
      statements.add(at < 0 ? statements.size() : at, statement);
    }
    Tree.Panel merged = with(panel, statements);
    boolean run = own.feederWiring().isPresent();
    return new Tree.Panel(
        merged.name(), own.label().or(merged::label), own.feed().or(merged::feed), run ? own.feederLength() : merged.feederLength(),
        own.feederWiring().or(merged::feederWiring), own.surroundings().isEmpty() ? merged.surroundings() : own.surroundings(),
        own.kind().or(merged::kind), own.status().or(merged::status), merged.statements(), merged.span());
  }

  private static Tree.Panel with(Tree.Panel panel, List<Tree.PanelStatement> statements) {
    return new Tree.Panel(
        panel.name(), panel.label(), panel.feed(), panel.feederLength(), panel.feederWiring(), panel.surroundings(), panel.kind(),
        panel.status(), statements, panel.span());
  }

  /** Whether a line of a panel is the one that another is instead of: that of the same slots, of the same branch, of the same kind. */
  private static boolean givesWay(Tree.PanelStatement line, Tree.PanelStatement own) {
    if (line.getClass() != own.getClass()) {
      return false;
    }
    if (own instanceof Tree.Slot mine) {
      Tree.Slot slot = (Tree.Slot) line;
      Function<Tree.Slot, Set<String>> fed = s -> new HashSet<>(s.words().stream().map(Tree.Word::text).toList());
      return common(fed.apply(slot), fed.apply(mine)) || common(numbers(slot), numbers(mine));
    }
    if (own instanceof Tree.PanelEarth mine) {
      return ((Tree.PanelEarth) line).earth().electrode().text().equals(mine.earth().electrode().text());
    }
    return !(own instanceof Tree.PanelFact fact) || ((Tree.PanelFact) line).fact().name().text().equals(fact.fact().name().text());
  }

  private static boolean common(Set<String> some, Set<String> others) {
    return some.stream().anyMatch(others::contains);
  }

  private static Set<String> numbers(Tree.Slot slot) {
    return slot.slots().isWritten() && slot.repetition().isEmpty() ? Set.of(slot.slots().text().split("\\+")) : Set.of();
  }
}
