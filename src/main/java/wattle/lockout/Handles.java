package wattle.lockout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.words.BreakerWords;
import wattle.words.HouseWords;

/** The handles that are to be opened, each once, with every reason for it. */
final class Handles {
  private final House house;
  private final Circuits circuits;
  private final HouseWords words;
  private final Map<Handle.Part, Handle> opened = new LinkedHashMap<>();

  Handles(House house, Circuits circuits, HouseWords words) {
    this.house = house;
    this.circuits = circuits;
    this.words = words;
  }

  void open(Breaker breaker, String reason) {
    add(new Handle.Part.OfBreaker(breaker.id()), words.panel(breaker.id().panel()) + ", slot " + breaker.id().slotText(),
        BreakerWords.named(breaker), reason);
  }

  void open(Device source, String reason) {
    add(new Handle.Part.OfSource(source.name()), words.room(source.room()), "disconnect of " + words.device(source), reason);
  }

  /** What lies between a panel's bus and its supply. */
  void openSupply(Panel panel, List<String> unknown) {
    String reason = "feeds the bus of " + words.panel(panel.name());
    if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      circuits.breaker(from.breaker()).ifPresent(b -> open(b, reason));
      return;
    }
    if (panel.main().isPresent() && panel.main().get().kind() != MainDevice.Kind.LUGS) {
      add(new Handle.Part.OfMain(panel.name()), words.panel(panel.name()), BreakerWords.main(panel.main().get()), reason);
    } else {
      unknown
          .add("panel " + words.panel(panel.name()) + " has no main that could be opened in the plan; ask the utility to disconnect it");
    }
    if (panel.supply() instanceof PanelSupply.Unknown) {
      unknown.add("the plan does not say what feeds panel " + words.panel(panel.name()));
    }
  }

  private void add(Handle.Part part, String where, String what, String reason) {
    Handle known = opened.get(part);
    List<String> reasons = new ArrayList<>(known == null ? List.of() : known.reasons());
    if (!reasons.contains(reason)) {
      reasons.add(reason);
    }
    opened.put(part, new Handle(part, where, what, reasons));
  }

  /** Panel by panel in the order of the plan, slots upwards; sources after the panels. */
  List<Handle> inOrder() {
    List<String> panels = List.copyOf(house.panels().keySet());
    return opened.values().stream()
        .sorted(
            Comparator.<Handle>comparingInt(h -> rank(h.part(), panels))
                .thenComparingInt(h -> h.part() instanceof Handle.Part.OfBreaker b ? b.breaker().slots().get(0).number() : 0)
                .thenComparing(h -> h.part().tag()))
        .toList();
  }

  private static int rank(Handle.Part part, List<String> panels) {
    if (part instanceof Handle.Part.OfBreaker b) {
      return 2 * panels.indexOf(b.breaker().panel()) + 1;
    }
    if (part instanceof Handle.Part.OfMain m) {
      return 2 * panels.indexOf(m.panel());
    }
    if (part instanceof Handle.Part.OfSource) {
      return 2 * panels.size() + 2;
    }
    throw new AssertionError(part);
  }
}
