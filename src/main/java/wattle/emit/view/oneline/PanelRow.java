package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.conductors.BranchLengths;
import wattle.loads.ConnectedLoads;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Pole;
import wattle.model.Protection;
import wattle.model.Status;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;
import wattle.words.BreakerWords;

/**
 * What one line of a panel says.
 *
 * @param what what it feeds, in plain words
 * @param load as in {@code 1200 VA}, of a source {@code gives 5000 VA}; empty for none
 * @param line the line that goes out; empty for a spare
 */
record PanelRow(Breaker breaker, String what, String load, Optional<Outgoing> line) {
  /**
   * A line that goes out of the panel.
   *
   * @param wiring with the length, as in {@code 12/2 NM-B, 14.5 m}; empty where it is not known
   * @param panel name of the panel that it feeds; empty for a branch
   */
  record Outgoing(String wiring, String panel) {
    static Outgoing toBranch(Branch branch, UnitSystem units) {
      return new Outgoing(PanelRow.wiring(branch, units), "");
    }

    static Outgoing toPanel(Panel panel, UnitSystem units) {
      return new Outgoing(PanelRow.wiring(panel, units), panel.name());
    }
  }

  /** What sources on the branch of a breaker are rated, in volt-amperes. */
  private static double given(House house, Breaker breaker) {
    return house.branchOf(breaker).stream().flatMap(b -> b.points().stream()).flatMap(p -> p.devices().stream())
        .map(house.devices()::get)
        .filter(d -> d != null && d.kind().family() == wattle.model.DeviceKind.Family.SOURCE)
        .mapToDouble(wattle.model.Device::voltAmperes).sum();
  }

  static PanelRow of(House house, ConnectedLoads loads, Breaker breaker) {
    String what = BreakerWords.description(house, breaker) + status(breaker.status());
    Optional<Outgoing> line = line(house, breaker);
    return new PanelRow(breaker, what, line.isPresent() ? load(house, loads, breaker) : "", line);
  }

  private static Optional<Outgoing> line(House house, Breaker breaker) {
    return house.branchOf(breaker).map(b -> Outgoing.toBranch(b, house.units()))
        .or(() -> house.panelOf(breaker).map(p -> Outgoing.toPanel(p, house.units())));
  }

  private static String load(House house, ConnectedLoads loads, Breaker breaker) {
    double given = given(house, breaker);
    double load = loads.behind(house, breaker).total();
    return given > 0 ? "gives " + Math.round(given) + " VA" : load > 0 ? Math.round(load) + " VA" : "";
  }

  /** As in {@code 2+4}. */
  String slots() {
    return String.join("+", breaker.poles().stream().map(p -> p.slot().toString()).toList());
  }

  /** As in {@code A+B}. */
  String legs() {
    return String.join("+", breaker.poles().stream().map(p -> p.leg().map(Leg::name).orElse("?")).toList());
  }

  /** With the protection, as in {@code 20 A AFCI}. */
  String rating() {
    return rating(breaker);
  }

  /** Wiring of the line that goes out; empty for none. */
  String wiring() {
    return line.map(Outgoing::wiring).orElse("");
  }

  /** Name of the panel that it feeds; empty for a branch and a spare. */
  String panel() {
    return line.map(Outgoing::panel).orElse("");
  }

  /** Whether a line goes out at all. */
  boolean leaves() {
    return line.isPresent();
  }

  /** Whether each panel that a panel feeds is metered there. */
  static boolean hasMeters(Panel panel) {
    return Boolean.TRUE.equals(panel.flags().get("meters"));
  }

  /** Whether the meter is at a service, which no panel behind it says of itself. */
  static boolean isMetered(House house, wattle.model.Service service) {
    return house.panels().values().stream().filter(p -> house.serviceOf(p).filter(service::equals).isPresent())
        .noneMatch(PanelRow::hasMeters);
  }

  private static String status(Status status) {
    return status == Status.NEW ? "" : status == Status.EXISTING ? " (existing)" : " (to be removed)";
  }

  private static String rating(Breaker breaker) {
    List<String> words = new ArrayList<>();
    words.add(breaker.rating().map(Quantity::toString).orElse("? A"));
    breaker.protections().stream().sorted().forEach(p -> words.add(p == Protection.ARC_FAULT ? "AFCI" : "GFCI"));
    if (breaker.handle() == Breaker.Handle.TIED) {
      words.add("tied");
    }
    return String.join(" ", words);
  }

  private static String wiring(Branch branch, UnitSystem units) {
    return branch.wiring().text() + ", "
        + BranchLengths.farthest(branch).map(m -> length(m, units)).orElse("? " + units.shown(Units.METER).symbol());
  }

  private static String wiring(Panel panel, UnitSystem units) {
    return panel
        .feeder()
        .map(f -> f.wiring().text() + ", "
            + f.length().map(l -> length(l.in(Units.METER), units)).orElse("? " + units.shown(Units.METER).symbol()))
        .orElse("");
  }

  /** In the units of the plan, with one decimal. */
  static String length(double meters, UnitSystem units) {
    Quantity shown = units.shown(Quantity.of(meters, Units.METER));
    return Quantity.plain(Math.round(shown.value() * 10) / 10.0, 4) + " " + shown.unit().symbol();
  }

  /** Legs that its poles stand on, for the dots on the bars. */
  List<Leg> taps() {
    return breaker.poles().stream().map(Pole::leg).flatMap(Optional::stream).toList();
  }

  /** The whole line in words, for the label of the graph. */
  String words() {
    return String.join(
        "  ", java.util.stream.Stream.of(slots(), legs(), rating(), wiring(), what, load).filter(s -> !s.isEmpty()).toList());
  }
}
