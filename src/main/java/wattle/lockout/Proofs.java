package wattle.lockout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Role;
import wattle.model.SupplySystem;

/** Between which conductors a box or panel is proved dead. */
final class Proofs {
  private final House house;
  private final Circuits circuits;

  Proofs(House house, Circuits circuits) {
    this.house = house;
    this.circuits = circuits;
  }

  /**
   * A conductor at the box that may have voltage.
   *
   * @param text by color, cable and role, and by the handle that feeds it where the branch has several
   * @param isFeed whether it is a hot itself and no switch leg or traveler of one
   * @param volts to the neutral as a phasor, where known
   */
  private record Hot(String text, boolean isFeed, Optional<Volts> volts) {}

  private record Volts(double real, double imaginary) {
    double to(Volts other) {
      return Math.hypot(real - other.real, imaginary - other.imaginary);
    }
  }

  private static final Volts EARTH = new Volts(0, 0);

  Lockout.Proof inBox(String box) {
    List<BoxConductors.Found> here = BoxConductors.in(box, circuits.at(box));
    Map<String, Integer> ofColor = new HashMap<>();
    here.forEach(f -> ofColor.merge(f.conductor().color(), 1, Integer::sum));
    List<Hot> hots = new ArrayList<>();
    List<String> neutrals = new ArrayList<>();
    List<Lockout.Reading> readings = new ArrayList<>();
    for (Branch branch : circuits.at(box)) {
      List<Hot> ofBranch = new ArrayList<>();
      List<String> itsNeutrals = new ArrayList<>();
      for (BoxConductors.Found found : here.stream().filter(f -> f.branch() == branch).toList()) {
        Role role = found.use().role();
        String looks = found.conductor().looks(ofColor.get(found.conductor().color()) > 1);
        if (role instanceof Role.Neutral) {
          itsNeutrals.add(looks + " neutral of " + branch.name());
        } else if (!(role instanceof Role.Ground)) {
          ofBranch.add(
              new Hot(looks + " " + name(found.conductor(), role, branch), role instanceof Role.Hot, voltsOf(role, branch)));
        }
      }
      for (Hot hot : ofBranch) {
        itsNeutrals.forEach(n -> readings.add(reading(hot.text, n, hot.volts, Optional.of(EARTH))));
      }
      neutrals.addAll(itsNeutrals);
      hots.addAll(ofBranch);
    }
    boolean ground = here.stream().anyMatch(f -> f.use().role() instanceof Role.Ground);
    String earth = ground ? "ground" : "a ground proved elsewhere (this box has none)";
    hots.forEach(h -> readings.add(reading(h.text, earth, h.volts, Optional.of(EARTH))));
    neutrals.forEach(n -> readings.add(reading(n, earth, Optional.of(EARTH), Optional.of(EARTH))));
    betweenFeeds(hots, readings);
    return new Lockout.Proof(box, here.stream().map(BoxConductors.Found::conductor).toList(), readings);
  }

  /** Two hots of one leg have the same role in words, so the handle tells them apart where each has its own. */
  private static String name(Lockout.Conductor conductor, Role role, Branch branch) {
    Optional<Integer> hot = Role.hotOf(role).filter(h -> h < branch.hots().size());
    boolean apart = branch.hots().stream().map(BranchHot::breaker).distinct().count() > 1;
    String handle = apart && hot.isPresent() ? " (" + branch.hots().get(hot.get()).breaker() + ")" : "";
    return conductor.role() + " of " + branch.name() + handle;
  }

  /** Between any two hots; a switch leg is taken to ground and neutral alone, since it follows its own hot. */
  private static void betweenFeeds(List<Hot> hots, List<Lockout.Reading> readings) {
    List<Hot> feeds = hots.stream().filter(Hot::isFeed).toList();
    for (int i = 0; i < feeds.size(); i++) {
      for (int j = i + 1; j < feeds.size(); j++) {
        readings.add(reading(feeds.get(i).text, feeds.get(j).text, feeds.get(i).volts, feeds.get(j).volts));
      }
    }
  }

  Lockout.Proof inPanel(Panel panel) {
    List<Lockout.Reading> readings = new ArrayList<>();
    List<Leg> legs = panel.legs();
    for (int i = 0; i < legs.size(); i++) {
      Optional<Volts> here = Optional.of(volts(panel.system(), legs.get(i)));
      String name = "bus leg " + legs.get(i);
      readings.add(reading(name, "neutral bar", here, Optional.of(EARTH)));
      readings.add(reading(name, "ground bar or enclosure", here, Optional.of(EARTH)));
      for (int j = i + 1; j < legs.size(); j++) {
        readings.add(reading(name, "bus leg " + legs.get(j), here, Optional.of(volts(panel.system(), legs.get(j)))));
      }
    }
    readings.add(reading("neutral bar", "ground bar or enclosure", Optional.of(EARTH), Optional.of(EARTH)));
    return new Lockout.Proof(panel.name(), List.of(), readings);
  }

  private static Lockout.Reading reading(String from, String to, Optional<Volts> a, Optional<Volts> b) {
    // Whole volts: what a tester shows is not finer, and the supply is not.
    return new Lockout.Reading(from, to, a.flatMap(x -> b.map(y -> (double) Math.round(x.to(y)))));
  }

  private Optional<Volts> voltsOf(Role role, Branch branch) {
    Optional<Integer> hot = Role.hotOf(role);
    if (hot.isEmpty()) {
      return Optional.of(EARTH);
    }
    if (hot.get() >= branch.hots().size()) {
      return Optional.empty();
    }
    BranchHot from = branch.hots().get(hot.get());
    return from.leg().map(leg -> volts(house.panels().get(from.breaker().panel()).system(), leg));
  }

  private static Volts volts(SupplySystem system, Leg leg) {
    double angle = Math.toRadians(system.degreesOf(leg));
    return new Volts(system.legToNeutralVolts() * Math.cos(angle), system.legToNeutralVolts() * Math.sin(angle));
  }
}
