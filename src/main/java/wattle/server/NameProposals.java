package wattle.server;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.CompletionItemKind;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.House;

/** Names of things of the house, those that still want something first. */
final class NameProposals {
  private final House house;
  private final Proposals proposals;

  NameProposals(House house, Proposals proposals) {
    this.house = house;
    this.proposals = proposals;
  }

  void branches() {
    house.branches().values().forEach(b -> proposals.add(b.name(), b.label().orElse("branch"), CompletionItemKind.Function));
  }

  void panels() {
    house.panels().values().forEach(p -> proposals.add(p.name(), p.label().orElse("panel"), CompletionItemKind.Class));
  }

  void trials() {
    house.trials().values().forEach(t -> proposals.add(t.name(), t.label().orElse("trial"), CompletionItemKind.Event));
  }

  void devices() {
    house.devices().values().forEach(d -> proposals.add(d.name(), detail(d), CompletionItemKind.Field));
    house.boxes().values().forEach(b -> proposals.add(b.name(), "box", CompletionItemKind.Field));
  }

  /** Boxes and devices that no branch reaches, then all others. */
  void unwiredFirst() {
    Set<String> wired = wired();
    house.boxes().keySet().stream()
        .filter(b -> !wired.contains(b))
        .forEach(b -> proposals.add(b, "on no branch yet", CompletionItemKind.Field));
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
    Set<String> fed =
        house.panels().values().stream()
            .flatMap(p -> p.breakers().stream())
            .map(b -> b.target() instanceof Breaker.Target.ToBranch t ? t.branch() : b.target() instanceof Breaker.Target.ToPanel t ? t.panel() : "")
            .collect(Collectors.toSet());
    house.branches().values().stream()
        .filter(b -> !fed.contains(b.name()))
        .forEach(b -> proposals.add(b.name(), "branch that nothing feeds yet", CompletionItemKind.Function));
    house.panels().values().stream()
        .filter(p -> !fed.contains(p.name()) && !(p.supply() instanceof wattle.model.PanelSupply.FromService))
        .forEach(p -> proposals.add(p.name(), "panel that nothing feeds yet", CompletionItemKind.Class));
  }

  /** What may follow the dot after a room, or after a device with halves. */
  void inPath(List<String> words) {
    String name = String.join(".", words);
    if (words.size() > 1) {
      Device device = house.devices().get(name);
      if (device != null) {
        device.kind().halves().forEach(h -> proposals.add(h, "half of " + name, CompletionItemKind.Property));
      }
      return;
    }
    Set<String> wired = wired();
    List<String> inside =
        java.util.stream.Stream.concat(house.boxes().keySet().stream(), house.devices().keySet().stream())
            .filter(n -> n.startsWith(name + "."))
            .distinct()
            .toList();
    inside.stream().filter(n -> house.boxes().containsKey(n) && !wired.contains(n)).forEach(n -> inRoom(n, "on no branch yet"));
    inside.forEach(n -> inRoom(n, java.util.Optional.ofNullable(house.devices().get(n)).map(NameProposals::detail).orElse("box")));
  }

  private void inRoom(String name, String detail) {
    proposals.add(name.substring(name.indexOf('.') + 1), detail, CompletionItemKind.Field);
  }
}
