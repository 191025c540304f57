package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import wattle.derivation.Derivation;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** General lighting by floor area, and small-appliance and laundry circuits. NFPA 70 Article 220 Part III. */
final class GeneralLoad {
  private final Inputs inputs;
  private final Figures figures;

  GeneralLoad(Inputs inputs, Figures figures) {
    this.inputs = inputs;
    this.figures = figures;
  }

  /** Lists what is connected, and gives the sum. */
  Derivation list(Tally tally) {
    List<Derivation> parts = new ArrayList<>();
    list(tally, parts, "general lighting", lighting(), inputs.dwellings().stream().map(DwellingUnit::name).toList());
    list(tally, parts, "small-appliance circuits", smallAppliances(), branches(true));
    list(tally, parts, "laundry circuits", laundry(), branches(false));
    return Sums.sum("general lighting, small appliances and laundry", parts);
  }

  /** Adds it with its demand, to the legs and to the neutral. */
  void add(Tally load, Tally neutral) {
    Derivation connected = list(load);
    if (connected.si() == 0) {
      return;
    }
    List<String> devices = devices();
    List<Figures.Tier> tiers = figures.tiers("general-demand", connected);
    load.list("subtotal, general load", connected, List.of(), Tally.article(tiers.get(0).factor()));
    for (Figures.Tier tier : tiers) {
      load.add("general load, " + tier.name(), tier.part(), tier.factor(), devices);
      neutral.add("general load, " + tier.name(), tier.part(), tier.factor(), devices);
    }
  }

  List<String> devices() {
    return Stream.of(branches(true), branches(false)).flatMap(List::stream).distinct().toList();
  }

  private static void list(
      Tally tally, List<Derivation> parts, String name, List<Derivation> terms, List<String> devices) {
    Derivation sum = Sums.sum(name, terms);
    if (sum.si() > 0) {
      parts.add(sum);
      tally.list(name, sum, devices);
    }
  }

  /** The lighting by floor area, without circuits. */
  Derivation lightingAlone() {
    return Sums.sum("general lighting", lighting());
  }

  private List<Derivation> lighting() {
    List<Derivation> terms = new ArrayList<>();
    for (DwellingUnit unit : inputs.dwellings()) {
      for (Quantity area : Stream.concat(unit.floorArea().stream(), unit.basementArea().stream()).toList()) {
        // The code rounds its two figures apart, so an area in square meters takes the one for square meters.
        boolean feet = area.unit().equals(Units.SQUARE_FOOT);
        Derivation per = figures.limit(feet ? "general-lighting" : "general-lighting-metric");
        terms.add(
            Derivation.computed(
                "lighting of " + unit.name(), "P", unit.alike() == 1 ? "A × p" : "n × A × p",
                unit.alike() * area.si() * per.si(), Units.VOLT_AMPERE,
                Derivation.stated("floor area", "A", area), per.named(per.name(), "p"),
                Sums.number("dwellings", unit.alike())));
      }
    }
    return terms;
  }

  private List<Derivation> smallAppliances() {
    Derivation each = figures.limit("small-appliance-circuit");
    int least = inputs.scope() == Inputs.Scope.SERVICE ? (int) figures.limit("small-appliance-circuits").si() : 0;
    return circuits(each, least, "small-appliance-circuits", true);
  }

  private List<Derivation> laundry() {
    Derivation each = figures.limit("laundry-circuit");
    // Several dwellings may share a laundry; a single one has its own.
    boolean single = inputs.scope() == Inputs.Scope.SERVICE && inputs.dwellingCount() == 1;
    return circuits(each, single ? (int) figures.limit("laundry-circuits").si() : 0, "laundry-circuits", false);
  }

  private List<Derivation> circuits(Derivation each, int least, String leastLimit, boolean small) {
    List<Derivation> terms = new ArrayList<>();
    for (DwellingUnit unit : inputs.dwellings()) {
      int own = (small ? unit.smallAppliance() : unit.laundry()).count();
      int count = Math.max(own, least);
      if (count > 0) {
        Derivation number = own >= least ? Sums.number("circuits", own) : figures.limit(leastLimit).named("circuits, the least", "n");
        int all = count * unit.alike();
        terms.add(
            Derivation.computed(
                "circuits of " + unit.name(), "P", unit.alike() == 1 ? "n × p" : "N × n × p", all * each.si(),
                Units.VOLT_AMPERE, number.named(number.name(), "n"), each.named(each.name(), "p"),
                Sums.number("dwellings", unit.alike()).named("dwellings", "N")));
      }
    }
    return terms;
  }

  private List<String> branches(boolean small) {
    return inputs.dwellings().stream()
        .flatMap(u -> (small ? u.smallAppliance() : u.laundry()).branches().stream())
        .distinct()
        .toList();
  }
}
