package wattle.worksheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * One dwelling by CSA C22.1 8-200 1) or, as an apartment, by 8-202 1): basic load by floor area, a range, what heats water
 * while it flows, vehicle charging, and other loads above 1500 W. Heating and cooling are apart, in
 * {@link CanadianClimate}.
 */
final class CanadianDwelling {
  private final DwellingUnit unit;
  private final Figures figures;
  private final boolean apartment;
  private final boolean addedAlone;
  private final boolean standingRange;

  CanadianDwelling(DwellingUnit unit, Figures figures, boolean apartment) {
    this(unit, figures, apartment, false, false);
  }

  private CanadianDwelling(DwellingUnit unit, Figures figures, boolean apartment, boolean addedAlone, boolean standingRange) {
    this.unit = unit;
    this.figures = figures;
    this.apartment = apartment;
    this.addedAlone = addedAlone;
    this.standingRange = standingRange;
  }

  /**
   * What is added to a dwelling whose demand is measured. Small loads, which the basic load of a whole dwelling has in it, count in full.
   *
   * @param standingRange whether a range is there already, so that a further one is another load, and others count in part
   */
  static CanadianDwelling ofAdded(DwellingUnit unit, Figures figures, boolean standingRange) {
    return new CanadianDwelling(unit, figures, false, true, standingRange);
  }

  void add(Tally load, Tally neutral) {
    addBasic(load, neutral);
    List<ConnectedLoad> ranges = loads(LoadClass.COOKING);
    Optional<ConnectedLoad> range = standingRange
        ? Optional.empty()
        : ranges.stream().max(Comparator.comparingDouble(ConnectedLoad::voltAmperes));
    range.ifPresent(r -> addRange(r, load, neutral));
    addWhole("tankless water heaters, steamers, pools, hot tubs and spas", "hot-water", load, neutral,
        LoadClass.INSTANT_WATER_HEATING, LoadClass.POOL_HEATING);
    addWhole("vehicle charging", "vehicle-charging", load, neutral, LoadClass.VEHICLE_CHARGING);
    addOther(range, load, neutral);
  }

  private List<ConnectedLoad> loads(LoadClass... classes) {
    List<LoadClass> wanted = List.of(classes);
    return unit.loads().stream().filter(l -> wanted.contains(l.loadClass()) && l.voltAmperes() > 0).toList();
  }

  // ---- Basic load

  /** Floor area as 8-110 counts it: the basement in part. */
  Derivation area() {
    Derivation floor = Derivation.stated("floor area", "A_f", unit.floorArea().orElse(Quantity.of(0, Units.SQUARE_METER)));
    if (unit.basementArea().isEmpty()) {
      return floor.named("counted floor area", "A");
    }
    Derivation basement = Derivation.stated("basement area", "A_b", unit.basementArea().get());
    Derivation counts = figures.limit("basement-counts").named("part that counts", "f_b");
    return Derivation.computed(
        "counted floor area", "A", "A_f + A_b × f_b", floor.si() + basement.si() * counts.si(), Units.SQUARE_METER, floor,
        basement, counts);
  }

  /** What its floor area stands for. */
  Derivation basic() {
    return apartment ? apartmentBasic(area()) : singleBasic(area());
  }

  private void addBasic(Tally load, Tally neutral) {
    if (area().si() > 0) {
      basic("basic load", basic(), load, neutral, List.of(unit.name()));
    }
    if (!unit.outlets().isEmpty()) {
      Derivation outlets = Sums.ofLoads("outlets outside the floor area", unit.outlets());
      basic(outlets.name(), outlets, load, neutral, Sums.names(unit.outlets()));
    }
  }

  private static void basic(String name, Derivation value, Tally load, Tally neutral, List<String> devices) {
    load.add(name, value, Optional.empty(), value, devices, "");
    neutral.add(name, value, Optional.empty(), value, devices, "");
  }

  private Derivation singleBasic(Derivation area) {
    Derivation first = figures.limit("basic-load").named("basic load", "P_1");
    Derivation more = figures.limit("basic-more").named("each further part", "P_2");
    Derivation steps = steps(area, figures.limit("basic-area").si(), "basic-step");
    return Derivation.computed(
        "basic load", "P", "P_1 + n × P_2", first.si() + steps.si() * more.si(), Units.VOLT_AMPERE, first, more, steps);
  }

  private Derivation apartmentBasic(Derivation area) {
    Derivation each = figures.limit("apartment-area");
    Derivation first = figures.limit("apartment-first").named("first part", "P_1");
    Derivation second = figures.limit("apartment-second").named("second part", "P_2");
    Derivation more = figures.limit("apartment-more").named("each further part", "P_3");
    Derivation steps = steps(area, 2 * each.si(), "apartment-step");
    boolean small = area.si() <= each.si() * (1 + 1e-9);
    return small
        ? first.named("basic load", "P")
        : Derivation.computed(
            "basic load", "P", "P_1 + P_2 + n × P_3", first.si() + second.si() + steps.si() * more.si(),
            Units.VOLT_AMPERE, first, second, more, steps);
  }

  private Derivation steps(Derivation area, double covered, String step) {
    Derivation each = figures.limit(step).named("each further part", "A_s");
    // An area that comes through units may miss a whole step by its last digit.
    double steps = Math.max(0, Math.ceil((area.si() - covered) / each.si() - 1e-9));
    return Derivation.computed(
        "further parts, each begun one whole", "n", "(A − A_1) / A_s", steps, Units.ONE, area.named(area.name(), "A"),
        Derivation.stated("covered already", "A_1", Quantity.of(covered, Units.SQUARE_METER)), each);
  }

  // ---- Range and others

  private void addRange(ConnectedLoad range, Tally load, Tally neutral) {
    Derivation upTo = figures.limit("range-rating").named("up to", "P_l");
    Derivation demand = figures.limit("dwelling-range-demand").named("demand of a range", "P_d");
    Derivation part = figures.limit("range-more").named("part of what is above", "f");
    Derivation rated = Derivation.stated(range.name(), "P_r", Sums.voltAmperes(range.voltAmperes()));
    Derivation result = range.voltAmperes() <= upTo.si()
        ? demand.named("demand of the range", "P")
        : Derivation.computed(
            "demand of the range", "P", "P_d + (P_r − P_l) × f",
            demand.si() + (rated.si() - upTo.si()) * part.si(), Units.VOLT_AMPERE, demand, rated, upTo, part);
    load.add("range", rated, Optional.empty(), result, List.of(range.name()), "");
    neutral.add("range", rated, Optional.empty(), result, List.of(range.name()), "");
  }

  private void addWhole(String name, String limit, Tally load, Tally neutral, LoadClass... classes) {
    List<ConnectedLoad> loads = loads(classes);
    add(name, loads, figures.limit(limit), load);
    add(name, Sums.onNeutral(loads), figures.limit(limit), neutral);
  }

  private static void add(String name, List<ConnectedLoad> loads, Derivation factor, Tally tally) {
    if (!loads.isEmpty()) {
      tally.add(name, Sums.ofLoads(name, loads), factor, Sums.names(loads));
    }
  }

  /** 8-200 1) a) vii): a further range is such a load too. */
  private void addOther(Optional<ConnectedLoad> range, Tally load, Tally neutral) {
    double from = figures.limit("other-from").si();
    List<ConnectedLoad> others = new ArrayList<>();
    List<ConnectedLoad> small = new ArrayList<>();
    for (ConnectedLoad other : loads(LoadClass.FIXED_APPLIANCE, LoadClass.WATER_HEATING, LoadClass.DRYER, LoadClass.MOTOR,
        LoadClass.COOKING)) {
      ConnectedLoad left = range.filter(r -> r == other).map(r -> r.count() - 1).orElse(other.count()) == other.count()
          ? other
          : oneLess(other);
      if (left != null && left.voltAmperes() > from) {
        others.add(left);
      } else if (left != null && addedAlone) {
        small.add(left);
      }
    }
    if (!small.isEmpty()) {
      String name = "other loads up to " + figures.limit("other-from").value().text() + ", in full";
      Derivation connected = Sums.ofLoads(name, small);
      load.addLine(
          new Line(name, "8-106 8)", Optional.of(connected), Optional.empty(), Optional.of(connected), 0, Sums.names(small), ""));
    }
    if (others.isEmpty()) {
      return;
    }
    if (range.isPresent() || standingRange) {
      addQuarter(others, load, neutral);
      return;
    }
    Derivation connected = Sums.ofLoads("other loads", others);
    double onNeutral = Sums.total(Sums.onNeutral(others));
    for (Figures.Tier tier : figures.tiers("other-without-range", connected)) {
      load.add("other loads, " + tier.name(), tier.part(), tier.factor(), Sums.names(others));
    }
    if (onNeutral > 0) {
      Derivation part = Derivation.stated("other loads on the neutral", "P", Sums.voltAmperes(onNeutral));
      for (Figures.Tier tier : figures.tiers("other-without-range", part)) {
        neutral.add("other loads, " + tier.name(), tier.part(), tier.factor(), Sums.names(others));
      }
    }
  }

  private void addQuarter(List<ConnectedLoad> others, Tally load, Tally neutral) {
    Derivation factor = figures.limit("other-with-range");
    add("other loads above " + figures.limit("other-from").value().text(), others, factor, load);
    add("other loads", Sums.onNeutral(others), factor, neutral);
  }

  private static ConnectedLoad oneLess(ConnectedLoad load) {
    return load.count() == 1
        ? null
        : new ConnectedLoad(
            load.name(), load.loadClass(), load.voltAmperes(), load.neutralShare(), load.leg(), load.motor(), load.added(),
            load.count() - 1, load.stated());
  }
}
