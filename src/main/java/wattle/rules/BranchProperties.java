package wattle.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wattle.conductors.BranchLengths;
import wattle.conductors.Conditions;
import wattle.derivation.Derivation;
import wattle.library.CableKind;
import wattle.loads.ConnectedLoads;
import wattle.model.Doubt;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.Leg;
import wattle.model.LoadClass;
import wattle.model.Metal;
import wattle.model.Role;
import wattle.model.RoomKind;
import wattle.model.Race;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** What rules may say of branches, runs and wiring. */
final class BranchProperties {
  private BranchProperties() {}

  static Map<String, Property> branch() {
    return new Properties<>(Branch.class, Doubt.WAY, Doubt.FED, Doubt.CONTENTS, Doubt.KIT, Doubt.FIGURES)
        .words("name", "its name", (f, b) -> Optional.of(b.name())).sure()
        .words("title", "its label, or else its name", (f, b) -> Optional.of(b.title())).sure()
        .words("use", "what it feeds, such as small-appliance, laundry", (f, b) -> b.kind()).rests(Doubt.USE)
        .words("status", "new, existing or to-remove", (f, b) -> f.statusWord(b.status())).rests(Doubt.STATUS)
        .number("hots", "number of its hots", (f, b) -> b.hots().size()).rests(Doubt.FED)
        .truth("shares-neutral", "whether two or more hots return on one neutral", (f, b) -> b.sharesNeutral()).rests(Doubt.FED, Doubt.WAY)
        .truth("has-neutral", "whether it has a neutral", (f, b) -> b.hasNeutral()).rests(Doubt.WAY)
        .truth("one-panel", "whether all its hots come from one panel",
            (f, b) -> b.hots().stream().map(h -> h.breaker().panel()).distinct().count() <= 1)
        .rests(Doubt.FED)
        .truth("opens-together", "whether one handle opens all its hots",
            (f, b) -> b.hots().stream().map(BranchHot::breaker).distinct().count() <= 1)
        .rests(Doubt.FED, Doubt.HANDLE, Doubt.TRAITS)
        .wordSet("legs", "legs of its hots",
            (f, b) -> b.hots().stream().map(h -> h.leg().map(Leg::name).orElse("?")).collect(Collectors.toCollection(TreeSet::new)))
        .rests(Doubt.FED, Doubt.LEGS, Doubt.SUPPLY)
        .figure("rating", Dimension.CURRENT, "of its breaker", (f, b) -> f.breakersOf(b).stream().findFirst().flatMap(Breaker::rating))
        .rests(Doubt.FED, Doubt.RATING)
        .figure("load", Units.VOLT_AMPERE, "connected load", (f, b) -> f.loads().branch(b.name()).total()).rests(Properties.LOADS_OF_BRANCH)
        .figure("current", Units.AMPERE, "current of its heaviest hot with everything on", BranchProperties::current)
        .rests(Properties.LOADS_OF_BRANCH).kept()
        .figure("continuous-current", Units.AMPERE, "of its heaviest hot, from loads that run three hours or more",
            BranchProperties::continuous)
        .rests(Properties.LOADS_OF_BRANCH)
        .kept()
        .figure("lasting-current", Units.AMPERE,
            "of its heaviest hot, from loads that run for hours: marked continuous, or vehicle charging, heating or stored hot water",
            (f, b) -> heaviest(f, b, CircuitLoad::isContinuous))
        .rests(Properties.LOADS_OF_BRANCH)
        .kept()
        .figure("heating-current", Units.AMPERE, "of its heaviest hot, from fixed resistance heating of rooms",
            (f, b) -> heaviest(f, b, CircuitLoad::isHeating))
        .rests(Properties.LOADS_OF_BRANCH)
        .kept()
        .figure("reach", Dimension.LENGTH, "wire path to its farthest box",
            (f, b) -> BranchLengths.farthest(b).map(m -> Quantity.of(m, Units.METER)))
        .rests(Doubt.WAY, Doubt.LENGTH)
        .figure("drop", Dimension.NONE,
            "voltage lost on the way to its farthest box at its stated loads' current, or its breaker's rating where none are stated,"
                + " as a part of the nominal voltage",
            Drop::of)
        .rests(Doubt.WAY, Doubt.LENGTH, Doubt.SURROUNDINGS, Doubt.FED, Doubt.RATING, Doubt.LEGS, Doubt.SUPPLY, Doubt.CONTENTS, Doubt.KIT,
            Doubt.FIGURES)
        .kept()
        .size("drop-size", "smallest hot of the same metal in which all of it would lose at most 3 %",
            (f, b) -> Drop.sizeWithin(f, b, SupplyProperties.advised(f)))
        .rests(Doubt.WAY, Doubt.LENGTH, Doubt.SURROUNDINGS, Doubt.FED, Doubt.RATING, Doubt.LEGS, Doubt.SUPPLY, Doubt.CONTENTS, Doubt.KIT,
            Doubt.FIGURES)
        .words("drop-remedy", "how to keep it within 3 %: the size, or the length that its conductors are good for", Drop::remedy)
        .rests(Doubt.WAY, Doubt.LENGTH, Doubt.SURROUNDINGS, Doubt.FED, Doubt.RATING, Doubt.LEGS, Doubt.SUPPLY, Doubt.CONTENTS, Doubt.KIT,
            Doubt.FIGURES)
        .number("outlets", "outlets on it", (f, b) -> (int) f.devicesOf(b).stream().filter(d -> d.kind().outlet()).count())
        .rests(Doubt.WAY, Doubt.CONTENTS, Doubt.KIT)
        .figure("fixed-current", Units.AMPERE,
            "of its heaviest hot, from stated loads that run together: without cooking, sources, and what is load-managed or"
                + " non-coincident",
            BranchProperties::fixed)
        .rests(Properties.LOADS_OF_BRANCH)
        .kept()
        .figure("cooking-current", Units.AMPERE,
            "of the cooking equipment on it: one range by its demand, one oven or cooktop by its nameplate",
            (f, b) -> f.systemOf(b).map(s -> CircuitLoad.cooking(f.library(), f.devicesOf(b), s)).orElse(0.0))
        .rests(Properties.LOADS_OF_BRANCH)
        .truth("of-dwelling", "whether it is fed from the panels of one of several dwellings", (f, b) -> f.dwellingOf(b).isPresent())
        .rests(Doubt.DWELLING, Doubt.SUPPLY, Doubt.FED, Doubt.PANELS)
        .truth("strays", "whether it has outlets in a room that has more of them from another dwelling's panels", (f, b) -> f.strays(b))
        .rests(Doubt.DWELLING, Doubt.SUPPLY, Doubt.FED, Doubt.PANELS, Doubt.WAY, Doubt.CONTENTS)
        .thing("first-outlet", Kind.DEVICE, "the outlet at the end of the home run; absent where the branch forks before it",
            (f, b) -> FirstOutlet.of(f, b, d -> d.kind().outlet()))
        .rests(Doubt.WAY, Doubt.CONTENTS, Doubt.KIT)
        .thing("first-receptacle", Kind.DEVICE, "the receptacle that all others are beyond; absent where there is none",
            (f, b) -> FirstOutlet.of(f, b, d -> d.kind().family() == DeviceKind.Family.RECEPTACLE))
        .rests(Doubt.WAY, Doubt.CONTENTS, Doubt.KIT)
        .truth("armored-home-run", "whether all runs up to its first outlet are in RMC, IMC, EMT or a metal-clad cable",
            FirstOutlet::isArmored)
        .rests(Doubt.WAY)
        .things("rooms", Kind.ROOM, "rooms that it has outlets in",
            (f, b) -> f.devicesOf(b).stream().filter(d -> d.kind().outlet()).flatMap(d -> f.roomOf(d).stream()).distinct().toList())
        .rests(Doubt.WAY, Doubt.CONTENTS, Doubt.KIT, Doubt.ROOM)
        .number("room-count", "how many rooms it has outlets in",
            (f, b) -> (int) f.devicesOf(b).stream().filter(d -> d.kind().outlet()).map(Device::room).distinct().count())
        .rests(Doubt.WAY, Doubt.CONTENTS, Doubt.KIT, Doubt.ROOM)
        .number("receptacles", "receptacles on it", (f, b) -> f.receptaclesOn(b)).rests(Doubt.WAY, Doubt.CONTENTS, Doubt.KIT)
        .wordSet("room-uses", "uses of the rooms that it serves",
            (f, b) -> f.devicesOf(b).stream().filter(d -> d.kind().outlet()).flatMap(d -> f.roomOf(d).flatMap(r -> r.kind()).stream())
                .collect(Collectors.toCollection(TreeSet::new)))
        .rests(Doubt.WAY, Doubt.CONTENTS, Doubt.KIT, Doubt.ROOM)
        .kept()
        .wordSet("protection", "what all its breakers protect against", BranchProperties::protection).rests(Doubt.FED, Doubt.TRAITS).kept()
        .thing("breaker", Kind.BREAKER, "the first breaker that it comes from", (f, b) -> f.breakersOf(b).stream().findFirst())
        .rests(Doubt.FED)
        .thing("panel", Kind.PANEL, "the panel that it starts at", (f, b) -> f.panelOf(b)).rests(Doubt.FED, Doubt.WAY)
        .thing("wiring", Kind.WIRING, "its usual wiring", (f, b) -> Optional.of(b.wiring())).rests(Doubt.WAY)
        .things("breakers", Kind.BREAKER, "all that it comes from", (f, b) -> f.breakersOf(b)).rests(Doubt.FED)
        .things("runs", Kind.RUN, "its runs", (f, b) -> f.runsOf(b)).rests(Doubt.WAY)
        .things("devices", Kind.DEVICE, "devices on it", (f, b) -> f.devicesOf(b)).rests(Doubt.WAY, Doubt.CONTENTS)
        .made();
  }

  private static double current(Facts facts, Branch branch) {
    return heaviest(facts, branch, d -> true);
  }

  private static double continuous(Facts facts, Branch branch) {
    return heaviest(facts, branch, d -> d.traits().contains("continuous"));
  }

  private static double fixed(Facts facts, Branch branch) {
    return heaviest(facts, branch,
        d -> d.kind().family() != DeviceKind.Family.SOURCE && d.kind().loadClass().filter(c -> c == LoadClass.COOKING).isEmpty()
            && !d.traits().contains("load-managed") && !d.traits().contains("non-coincident") && !d.traits().contains("standby"));
  }

  /** Current in the hot that carries most of what some devices draw, in amperes. */
  private static double heaviest(Facts facts, Branch branch, Predicate<Device> counts) {
    return facts.systemOf(branch).map(system -> ConnectedLoads.ofHots(facts.house(), branch, counts).stream()
        .mapToDouble(load -> load.heaviestAmperes(system)).max().orElse(0)).orElse(0.0);
  }

  private static TreeSet<String> protection(Facts facts, Branch branch) {
    List<Breaker> breakers = facts.breakersOf(branch);
    TreeSet<String> words = new TreeSet<>();
    for (wattle.model.Protection p : wattle.model.Protection.values()) {
      if (!breakers.isEmpty() && breakers.stream().allMatch(b -> b.protections().contains(p))) {
        words.add(p.word());
      }
    }
    return words;
  }

  static Map<String, Property> run() {
    Properties<RunOf> properties = new Properties<>(RunOf.class, Doubt.WAY)
        .words("from", "where it starts", (f, r) -> Optional.of(Facts.pointName(r, r.section().from())))
        .words("to", "where it ends", (f, r) -> Optional.of(Facts.pointName(r, r.section().to())))
        .words("status", "new, existing or to-remove", (f, r) -> f.statusWord(r.section().status())).rests(Doubt.STATUS)
        .figure("length", Dimension.LENGTH, "its length", (f, r) -> r.section().length()).rests(Doubt.WAY, Doubt.LENGTH)
        .stated("its length between the dashes")
        .words("place", "where it runs, such as attic", (f, r) -> r.section().surroundings().place()).rests(Doubt.WAY, Doubt.SURROUNDINGS)
        .truth("underground", "whether it is buried", (f, r) -> r.section().surroundings().underground())
        .rests(Doubt.WAY, Doubt.SURROUNDINGS)
        .figure("depth", Dimension.LENGTH, "of its burial", (f, r) -> r.section().surroundings().buried())
        .rests(Doubt.WAY, Doubt.SURROUNDINGS)
        .stated("buried 0.6 m on the run", "buried 24 in on the run")
        .figure("support", Dimension.LENGTH, "the greatest distance between its supports", (f, r) -> r.section().surroundings().supported())
        .rests(Doubt.WAY, Doubt.SURROUNDINGS)
        .stated("supported 1.2 m on the run or its branch", "supported 4 ft on the run or its branch")
        .figure("first-support", Dimension.LENGTH, "the greatest distance from a box to the support nearest it",
            (f, r) -> r.section().surroundings().held())
        .rests(Doubt.WAY, Doubt.SURROUNDINGS)
        .stated("held 0.25 m on the run or its branch", "held 10 in on the run or its branch")
        .figure("from-edge", Dimension.LENGTH, "the least distance from the edge of the framing that it goes through or along",
            (f, r) -> r.section().surroundings().fromEdge())
        .rests(Doubt.WAY, Doubt.SURROUNDINGS)
        .stated("from-edge 35 mm or nail-plated on the run or its branch", "from-edge 1.5 in or nail-plated on the run or its branch")
        .truth("nail-plated", "whether steel plates protect it where it is nearer to that edge",
            (f, r) -> r.section().surroundings().nailPlated())
        .rests(Doubt.WAY, Doubt.SURROUNDINGS)
        .number("bundled", "cables together, itself counted", (f, r) -> r.section().surroundings().bundledWith())
        .rests(Doubt.WAY, Doubt.SURROUNDINGS)
        .truth("leaves-house", "whether it ends outdoors", BranchProperties::endsOutdoors)
        .wordSet("room-uses", "kinds of the rooms at its ends", BranchProperties::roomUses)
        .rests(Doubt.ROOM)
        .truth("in-damp", "whether a room at its end is damp or wet",
            (f, r) -> endsIn(f, r, "damp") || endsIn(f, r, "wet"))
        .rests(Doubt.ROOM)
        .truth("in-wet", "whether a room at its end is wet", (f, r) -> endsIn(f, r, "wet"))
        .rests(Doubt.ROOM)
        .truth("in-corrosive", "whether it goes through a corrosive place, or a room at its end is one",
            (f, r) -> r.section().surroundings().place().filter("corrosive"::equals).isPresent() || endsIn(f, r, "corrosive"))
        .rests(Doubt.ROOM, Doubt.WAY, Doubt.SURROUNDINGS)
        .wordSet("roles", "what its conductors do",
            (f, r) -> r.section().conductors().stream().map(c -> roleWord(c.role())).collect(Collectors.toCollection(TreeSet::new)))
        .figure("ampacity", Dimension.CURRENT, "of its hots with every factor",
            (f, r) -> conditions(f, r).flatMap(c -> f.conductors().ampacities().of(c)).flatMap(a -> a.allowed().quantity()))
        .rests(Doubt.WAY, Doubt.SURROUNDINGS, Doubt.FED, Doubt.SUPPLY)
        .kept()
        .words("ampacity-sum", "how its ampacity is calculated, and which column, terminals or rule limit it",
            BranchProperties::ampacityWords)
        .sure()
        .truth("carries-load", "whether its hots have the ampacity that the stated loads beyond it need; not known without a code",
            (f, r) -> CircuitCheck.of(f, r).map(CircuitCheck::carries).orElse(null))
        .rests(Properties.LOADS_OF_BRANCH)
        .kept()
        .figure("load-needs", Dimension.CURRENT, "ampacity that the stated loads beyond it need, at most the rating of the breaker",
            (f, r) -> CircuitCheck.of(f, r).map(c -> tenth(c.needs())))
        .rests(Properties.LOADS_OF_BRANCH)
        .figure("load-has", Dimension.CURRENT, "ampacity that its hots have for that",
            (f, r) -> CircuitCheck.of(f, r).map(c -> tenth(c.has())))
        .rests(Properties.LOADS_OF_BRANCH)
        .figure("standby-needs", Dimension.CURRENT,
            "ampacity that the conductors of a generator need that stays where it is; absent for all else", BranchProperties::standbyNeeds)
        .rests(Properties.LOADS_OF_BRANCH)
        .figure("standby-has", Dimension.CURRENT, "ampacity that its hots have for that, by their terminals too",
            (f, r) -> CircuitCheck.of(f, r, CircuitLoad.NONE).map(c -> tenth(c.has())))
        .rests(Properties.LOADS_OF_BRANCH)
        .truth("source-carries", "whether its hots have the ampacity that the inverters beyond it need; not known where there are none",
            (f, r) -> Interconnection.conductors(f, r).map(CircuitCheck::carries).orElse(null))
        .rests(Properties.LOADS_OF_BRANCH)
        .figure("source-needs", Dimension.CURRENT, "ampacity that the inverters beyond it need, at most the rating of the breaker",
            (f, r) -> Interconnection.conductors(f, r).map(c -> tenth(c.needs())))
        .rests(Properties.LOADS_OF_BRANCH)
        .figure("source-has", Dimension.CURRENT, "ampacity that its hots have for that",
            (f, r) -> Interconnection.conductors(f, r).map(c -> tenth(c.has())))
        .rests(Properties.LOADS_OF_BRANCH)
        .size("source-size", "smallest hot of the same metal that carries what the inverters beyond it give", Interconnection::least)
        .rests(Properties.LOADS_OF_BRANCH)
        .words("load-sum", "the sum of the stated loads beyond it, each with its factor", (f, r) -> Optional.of(f.circuitLoad(r).sum()))
        .sure()
        .size("load-size", "smallest hot of the same metal that carries the stated loads beyond it", CircuitCheck::least)
        .rests(Properties.LOADS_OF_BRANCH)
        .truth("neutral-carries",
            "whether its neutral has the ampacity for what the stated loads beyond it return on it; not known where two hots are on"
                + " one leg, or it is as large as they are",
            (f, r) -> NeutralLoad.of(f, r).map(NeutralLoad::carries).orElse(null))
        .rests(Properties.LOADS_OF_BRANCH)
        .figure("neutral-current", Dimension.CURRENT, "what its neutral carries with all stated loads beyond it on",
            (f, r) -> NeutralLoad.of(f, r).map(n -> tenth(n.amperes())))
        .rests(Properties.LOADS_OF_BRANCH)
        .figure("neutral-has", Dimension.CURRENT, "ampacity that its neutral has for that",
            (f, r) -> NeutralLoad.of(f, r).map(n -> tenth(n.ampacity())))
        .rests(Properties.LOADS_OF_BRANCH)
        .truth("first-alike", "whether no run before it on its branch is made and laid the same way", BranchProperties::firstAlike)
        .kept()
        .figure("terminal-temperature", Dimension.TEMPERATURE,
            "what the terminals at both its ends are marked for, the lowest of them; not known where none is marked",
            (f, r) -> breaker(f, r).flatMap(Breaker::rating).flatMap(q -> marked(f, r, q)).flatMap(Derivation::quantity))
        .rests(Doubt.WAY, Doubt.FED, Doubt.TRAITS, Doubt.PANEL, Doubt.KIT)
        .kept()
        .truth("takes-aluminum",
            "whether all terminals at its ends are marked for aluminum; not known where one says nothing and none says otherwise",
            (f, r) -> f.conductors().terminations().take(Metal.ALUMINUM, r.branch(), r.section()).orElse(null))
        .rests(Doubt.WAY, Doubt.FED, Doubt.TRAITS, Doubt.PANEL, Doubt.KIT)
        .stated("terminals with Cu, Al or CO-ALR at both ends")
        .figure("largest-breaker", Dimension.CURRENT, "largest breaker that protects its hots", BranchProperties::largest)
        .rests(Doubt.WAY, Doubt.SURROUNDINGS, Doubt.FED, Doubt.TRAITS, Doubt.PANEL).kept()
        .words("largest-why", "why it is no larger, or that it is the next standard rating, or that of the article of its load",
            BreakerOfWire::why)
        .rests(Doubt.WAY, Doubt.SURROUNDINGS, Doubt.FED, Doubt.TRAITS, Doubt.PANEL).kept()
        .figure("largest-for-load", Dimension.CURRENT,
            "largest breaker that protects its hots; absent where the stated loads beyond it would trip that", BreakerOfWire::forLoad)
        .rests(Doubt.WAY, Doubt.SURROUNDINGS, Doubt.FED, Doubt.TRAITS, Doubt.PANEL, Doubt.CONTENTS, Doubt.FIGURES)
        .words("breaker-remedy", "what can be done where its breaker is above that", BreakerOfWire::remedy)
        .rests(Doubt.WAY, Doubt.SURROUNDINGS, Doubt.FED, Doubt.TRAITS, Doubt.PANEL, Doubt.CONTENTS, Doubt.FIGURES)
        .truth("white-hot", "whether a white conductor of it works as something other than a neutral",
            (f, r) -> r.section().conductors().stream().anyMatch(ConductorUse::reidentified))
        .rests(Doubt.WAY, Doubt.FED, Doubt.CONTENTS)
        .size("least-ground", "least ground for its breaker, never larger than its hots",
            (f, r) -> breaker(f, r).flatMap(Breaker::rating)
                .flatMap(q -> LeastGround.forBreaker(f, r.section().wiring(), Derivation.stated("rating", "I", q))))
        .rests(Doubt.WAY, Doubt.FED, Doubt.RATING)
        .size("needed-size", "smallest hot that is enough here, derated and with no rating rounded up", CircuitCheck::sufficient)
        .rests(Doubt.WAY, Doubt.FED, Doubt.RATING, Doubt.SURROUNDINGS)
        .size("enlarged-ground", "least ground where its hots are larger than needed",
            (f, r) -> breaker(f, r).flatMap(Breaker::rating).flatMap(q -> CircuitCheck.sufficient(f, r)
                .flatMap(n -> LeastGround.enlarged(f, r.section().wiring(), Derivation.stated("rating", "I", q), n))))
        .rests(Doubt.WAY, Doubt.FED, Doubt.RATING, Doubt.SURROUNDINGS)
        .thing("wiring", Kind.WIRING, "what it is made with", (f, r) -> Optional.of(r.section().wiring())).ofSort()
        .thing("branch", Kind.BRANCH, "that it is of", (f, r) -> Optional.of(r.branch())).sure()
        .thing("breaker", Kind.BREAKER, "the first breaker of its branch", (f, r) -> breaker(f, r)).rests(Doubt.FED)
        .truth("first-so-filled",
            "whether no run before it on its branch has the same conductors in the same raceway, as full as it may be",
            BranchProperties::firstSoFilled)
        .rests(Doubt.WAY, Doubt.LENGTH);
    return RacewayProperties.addTo(properties, (f, r) -> Optional.of(r.section().wiring()), (f, r) -> r.section().length()).made();
  }

  /** Of what the generator gives, so many percent by the code; all of it where a breaker of its own holds it to that. */
  private static Optional<Quantity> standbyNeeds(Facts facts, RunOf run) {
    return facts.devicesOf(run.branch()).stream().filter(d -> d.kind().name().endsWith("standby generator")).findFirst()
        .flatMap(d -> Standby.gives(facts, d).flatMap(
            gives -> facts.library().limit("generator-conductor")
                .map(l -> tenth(gives.si() * (d.traits().contains("own-breaker") ? 1 : l.value().si())))));
  }

  private static boolean endsOutdoors(Facts facts, RunOf run) {
    return kindAt(facts, run, run.section().to()).filter(k -> k.places().contains("outdoors")).isPresent();
  }

  private static boolean endsIn(Facts facts, RunOf run, String flag) {
    return isIn(facts, run, run.section().from(), flag) || isIn(facts, run, run.section().to(), flag);
  }

  private static boolean isIn(Facts facts, RunOf run, int point, String flag) {
    Optional<String> box = run.branch().points().get(point).box();
    return box.isPresent() && facts.house().rooms().get(facts.house().boxes().get(box.get()).room()).flags().getOrDefault(flag, false);
  }

  private static Set<String> roomUses(Facts facts, RunOf run) {
    return Stream.of(run.section().from(), run.section().to()).flatMap(p -> kindAt(facts, run, p).stream()).map(RoomKind::word)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Optional<RoomKind> kindAt(Facts facts, RunOf run, int point) {
    return run.branch().points().get(point).box()
        .map(facts.house().boxes()::get)
        .map(b -> facts.house().rooms().get(b.room()))
        .flatMap(r -> r.kind())
        .flatMap(RoomKind::of);
  }

  private static String roleWord(Role role) {
    if (role instanceof Role.SwitchLeg) {
      return "switch-leg";
    }
    if (role instanceof Role.Traveler) {
      return "traveler";
    }
    return role.getClass().getSimpleName().toLowerCase(java.util.Locale.ROOT);
  }

  private static Optional<Breaker> breaker(Facts facts, RunOf run) {
    return facts.breakersOf(run.branch()).stream().findFirst();
  }

  /** As the trade writes amperes. */
  private static Quantity tenth(double amperes) {
    return Quantity.of(Math.round(amperes * 10 + 1e-6) / 10.0, Units.AMPERE);
  }

  private static Optional<String> ampacityWords(Facts facts, RunOf run) {
    Optional<Quantity> rating = CircuitCheck.rating(facts, run);
    return conditions(facts, run).flatMap(c -> {
      Optional<Derivation> current = rating.map(q -> Derivation.stated("rating", "I", q));
      Optional<Derivation> celsius = rating.flatMap(q -> marked(facts, run, q))
          .or(() -> current.flatMap(q -> facts.conductors().ampacities().unmarked(q)));
      Optional<Derivation> ends = current.flatMap(q -> facts.conductors().ampacities().atTerminals(c.size(), c.metal(), q, celsius));
      return AmpacityWords.of(facts, c, run.section().wiring(), ends, celsius.flatMap(Derivation::quantity));
    });
  }

  private static boolean firstAlike(Facts facts, RunOf run) {
    Optional<Conditions> own = conditions(facts, run);
    for (RunOf other : facts.runsOf(run.branch())) {
      if (other.section() == run.section()) {
        return true;
      }
      if (other.section().status() == run.section().status() && other.section().wiring().wires().equals(run.section().wiring().wires())
          && conditions(facts, other).equals(own)) {
        return false;
      }
    }
    return true;
  }

  private static boolean firstSoFilled(Facts facts, RunOf run) {
    for (RunOf other : facts.runsOf(run.branch())) {
      if (other.section() == run.section()) {
        return true;
      }
      if (other.section().status() == run.section().status() && sameRace(other.section().wiring(), run.section().wiring())
          && nipple(facts, other) == nipple(facts, run)) {
        return false;
      }
    }
    return true;
  }

  private static boolean sameRace(Wiring one, Wiring other) {
    return one.race().equals(other.race()) && one.type().equals(other.type()) && one.wires().equals(other.wires());
  }

  private static boolean nipple(Facts facts, RunOf run) {
    return facts.conductors().raceways().fills().isNipple(run.section().length());
  }

  private static Optional<Conditions> conditions(Facts facts, RunOf run) {
    return facts.conductors().runs().of(run.branch(), run.section(), run.section().wiring().hot());
  }

  /** Rounding up to the next standard rating is open only to branches without receptacles for portable loads. */
  static Optional<Quantity> largest(Facts facts, RunOf run) {
    Wire hot = run.section().wiring().hot();
    boolean mayRoundUp = facts.receptaclesOn(run.branch()) <= 1;
    Optional<Quantity> rating = breaker(facts, run).flatMap(Breaker::rating);
    return conditions(facts, run)
        .flatMap(c -> rating
            .flatMap(r -> facts.largestBreaker(new HouseIndex.Guarded(c, r, marked(facts, run, r), hot.size(), hot.metal(), mayRoundUp)))
            .map(own -> rating.get().si() <= own.si()
                ? own
                : LargerBreaker.of(facts, run).filter(l -> l.si() > own.si()).orElse(own)));
  }

  private static Optional<Derivation> marked(Facts facts, RunOf run, Quantity rating) {
    return facts.conductors().terminations().of(run.branch(), run.section(), Derivation.stated("rating", "I", rating));
  }

  static Map<String, Property> wiring() {
    return new Properties<>(Wiring.class)
        .words("text", "as the plan writes it", (f, w) -> Optional.of(w.text()))
        .words("type", "type of cable or conductor", (f, w) -> w.type().isEmpty() ? Optional.empty() : Optional.of(w.type())).ofSort()
        .words("raceway", "kind of its raceway", (f, w) -> w.raceway()).ofSort()
        .figure("trade-size", Dimension.LENGTH, "trade size of its raceway, or its metric designator",
            (f, w) -> w.race().map(Race::size))
        .words("metal", "of its hots, in words", (f, w) -> Optional.of(w.hot().metal().word())).ofSort()
        .size("size", "of its hots", (f, w) -> Optional.of(w.hot().size())).ofSort()
        .size("ground", "of its ground", (f, w) -> w.ground().map(Wire::size)).ofSort()
        .size("neutral", "of its neutral", (f, w) -> w.neutral().map(Wire::size)).ofSort()
        .number("sets", "how many identical sets run in parallel; usually one", (f, w) -> w.sets()).ofSort()
        .truth("has-ground", "whether it has a ground", (f, w) -> w.ground().isPresent()).ofSort()
        .truth("has-neutral", "whether it has a conductor made to be a neutral", (f, w) -> w.neutral().isPresent()).ofSort()
        .number("hots", "conductors made to be hots", (f, w) -> w.wires().stream().filter(x -> x.purpose() == Wire.Purpose.HOT).count())
        .figure("insulation", Dimension.TEMPERATURE, "temperature rating of its insulation",
            (f, w) -> Optional.of(Quantity.of(w.insulationCelsius(), Units.CELSIUS)))
        .wordSet("places", "where it may be used: dry, damp, wet, buried, sunlight",
            (f, w) -> f.library().cable(w.type()).map(CableKind::places).orElse(java.util.Set.of()))
        .made();
  }
}
