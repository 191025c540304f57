package wattle.server;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.CompletionItemKind;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.syntax.Tree;

/** Names of things of the house, those that still want something first; in a pattern, as they are called there. */
final class NameProposals {
  private final House house;
  private final Proposals proposals;
  private final String placement;
  private final List<String> parameters;
  private final List<String> constants;
  private final List<String> patterns;
  private final List<String> counters;

  /**
   * @param placement the first placement of the pattern that is written in; empty in the plan
   * @param parameters those of that pattern
   */
  private NameProposals(House house, Proposals proposals, String placement, List<String> parameters, List<String> constants,
      List<String> patterns, List<String> counters) {
    this.counters = counters;
    this.parameters = parameters;
    this.constants = constants;
    this.patterns = patterns;
    this.house = house;
    this.proposals = proposals;
    this.placement = placement;
  }

  /** Proposes names where a place stands in a document. */
  static NameProposals at(Question question, int cursor, Proposals proposals) {
    String placement = question.tree().items().stream()
        .filter(i -> i instanceof Tree.Pattern && question.touches(i, cursor, cursor))
        .flatMap(i -> question.analysis().inHouse(new Named(Named.Kind.PATTERN, ((Tree.Pattern) i).name().text())).stream())
        .findFirst()
        .orElse("");
    List<Occurrence> declared = question.analysis().derived().names().stream().filter(Occurrence::declares).toList();
    return new NameProposals(question.analysis().house(), proposals, placement, CursorPlace.at(question, cursor).parameters(),
        words(declared, Named.Kind.CONSTANT), words(declared, Named.Kind.PATTERN),
        words(declared.stream().filter(o -> o.thing().pattern().contains("@")).toList(), Named.Kind.PARAMETER));
  }

  private static List<String> words(List<Occurrence> declared, Named.Kind kind) {
    return declared.stream().filter(o -> o.thing().kind() == kind).map(o -> o.thing().word()).distinct().toList();
  }

  /** What the pattern is given, of which any may stand for a cable or a kind. */
  void parameters() {
    parameters.forEach(p -> proposals.add(p, "parameter", CompletionItemKind.Variable));
  }

  /** What a repetition counts by. */
  void counters() {
    counters.forEach(c -> proposals.add(c, "number of a repetition", CompletionItemKind.Variable));
  }

  /** Constants of the plan, and those of the pattern that is written in. */
  void constants() {
    constants.forEach(c -> proposals.add(c, "constant", CompletionItemKind.Constant));
  }

  void patterns() {
    patterns.forEach(p -> proposals.add(p, "pattern", CompletionItemKind.Class));
  }

  private void add(String name, String detail, CompletionItemKind kind) {
    if (placement.isEmpty()) {
      proposals.add(name, detail, kind);
    } else if (name.startsWith(placement + ".") && house.boxes().containsKey(name) && name.lastIndexOf('.') == placement.length()) {
      // In the room that has the pattern's own name.
      proposals.add(house.placements().get(placement) + name.substring(placement.length()), detail, kind);
    } else if (name.startsWith(placement + ".")) {
      proposals.add(name.substring(placement.length() + 1), detail, kind);
    } else if (name.equals(placement)) {
      proposals.add(house.placements().get(placement), detail, kind);
    } else if (house.placements().keySet().stream().noneMatch(p -> name.equals(p) || name.startsWith(p + "."))) {
      proposals.add(name, detail, kind);
    }
  }

  void branches() {
    house.branches().values().forEach(b -> add(b.name(), b.label().orElse("branch"), CompletionItemKind.Function));
  }

  void panels() {
    house.panels().values().forEach(p -> add(p.name(), p.label().orElse("panel"), CompletionItemKind.Class));
  }

  void services() {
    house.services().values().forEach(s -> add(s.name(), s.label().orElse("service"), CompletionItemKind.Interface));
  }

  /** What feeds back into the panel: generators, storage, solar. */
  void sources() {
    house.devices().values().stream()
        .filter(d -> d.kind().family() == DeviceKind.Family.SOURCE)
        .forEach(d -> add(d.name(), detail(d), CompletionItemKind.Field));
  }

  void rooms() {
    house.rooms().values().forEach(r -> add(r.name(), r.label().orElse("room"), CompletionItemKind.Module));
  }

  void raceways() {
    house.raceways().values().forEach(r -> add(r.name(), r.label().orElse("raceway"), CompletionItemKind.Variable));
  }

  void trials() {
    house.trials().values().forEach(t -> add(t.name(), t.label().orElse("trial"), CompletionItemKind.Event));
  }

  void devices() {
    house.devices().values().forEach(d -> add(d.name(), detail(d), CompletionItemKind.Field));
    house.boxes().values().forEach(b -> add(b.name(), "box", CompletionItemKind.Field));
  }

  /** Boxes and devices that no branch reaches, then all others. */
  void unwiredFirst() {
    Set<String> wired = wired();
    house.boxes().keySet().stream()
        .filter(b -> !wired.contains(b))
        .forEach(b -> add(b, "on no branch yet", CompletionItemKind.Field));
    devices();
  }

  private Set<String> wired() {
    return house.branches().values().stream()
        .flatMap(b -> b.points().stream())
        .flatMap(p -> p.box().stream())
        .collect(Collectors.toSet());
  }

  private static String detail(Device device) {
    return device.kind().name() + device.label().map(l -> ", " + l).orElse("");
  }

  /** What a breaker may feed: first what nothing feeds yet. */
  void targets() {
    Set<String> fed = house.panels().values().stream()
        .flatMap(p -> p.breakers().stream())
        .map(b -> b.target() instanceof Breaker.Target.ToBranch t
            ? t.branch()
            : b.target() instanceof Breaker.Target.ToPanel t ? t.panel() : "")
        .collect(Collectors.toSet());
    house.branches().values().stream()
        .filter(b -> !fed.contains(b.name()))
        .forEach(b -> add(b.name(), "branch that nothing feeds yet", CompletionItemKind.Function));
    house.panels().values().stream()
        .filter(p -> !fed.contains(p.name()) && !(p.supply() instanceof wattle.model.PanelSupply.FromService))
        .forEach(p -> add(p.name(), "panel that nothing feeds yet", CompletionItemKind.Class));
    branches();
    panels();
  }

  /** What may follow the dot after a room, or after a device with halves. */
  void inPath(List<String> words) {
    String written = String.join(".", words);
    boolean local = !placement.isEmpty() && house.rooms().containsKey(placement + "." + written);
    String name = local ? placement + "." + written : written.equals(house.placements().getOrDefault(placement, "")) ? placement : written;
    Device device = house.devices().get(name);
    if (device != null) {
      device.kind().halves().forEach(h -> proposals.add(h, "half of " + name, CompletionItemKind.Property));
      return;
    }
    placement(name);
    Set<String> wired = wired();
    List<String> inside = java.util.stream.Stream.concat(house.boxes().keySet().stream(), house.devices().keySet().stream())
        .filter(n -> n.startsWith(name + ".") && n.lastIndexOf('.') == name.length())
        .distinct()
        .toList();
    inside.stream().filter(n -> house.boxes().containsKey(n) && !wired.contains(n)).forEach(n -> inRoom(n, "on no branch yet"));
    inside.forEach(n -> inRoom(n, java.util.Optional.ofNullable(house.devices().get(n)).map(NameProposals::detail).orElse("box")));
  }

  /** What is in a placement beside its own room: rooms, panels and branches, by the word after its name. */
  private void placement(String name) {
    if (house.placements().containsKey(name)) {
      house.rooms().keySet().forEach(r -> inside(r, name, "room", CompletionItemKind.Module));
      house.panels().keySet().forEach(p -> inside(p, name, "panel", CompletionItemKind.Class));
      house.branches().keySet().forEach(b -> inside(b, name, "branch", CompletionItemKind.Function));
      house.trials().keySet().forEach(t -> inside(t, name, "trial", CompletionItemKind.Event));
      house.placements().forEach((p, pattern) -> inside(p, name, "placement of " + pattern, CompletionItemKind.Module));
    }
  }

  private void inside(String thing, String placement, String detail, CompletionItemKind kind) {
    if (thing.startsWith(placement + ".") && thing.lastIndexOf('.') == placement.length()) {
      proposals.add(thing.substring(placement.length() + 1), detail, kind);
    }
  }

  private void inRoom(String name, String detail) {
    proposals.add(name.substring(name.lastIndexOf('.') + 1), detail, CompletionItemKind.Field);
  }
}
