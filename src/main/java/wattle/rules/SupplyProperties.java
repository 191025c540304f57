package wattle.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wattle.conductors.Conditions;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.loads.LegLoads;
import wattle.model.Doubt;
import wattle.model.Breaker;
import wattle.model.Dwelling;
import wattle.model.Leg;
import wattle.model.Metal;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Protection;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Status;
import wattle.model.Stretch;
import wattle.model.Terminals;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/** What rules may say of services, electrodes, panels, breakers and feeders. */
final class SupplyProperties {
  private SupplyProperties() {}

  static Map<String, Property> service() {
    Properties<Service> properties = new Properties<>(Service.class, Doubt.SERVICE)
        .words("name", "its name", (f, s) -> Optional.of(s.name())).sure()
        .words("system", "split-phase, two-legs-of-wye, three-phase-wye or single-phase",
            (f, s) -> Optional.of(s.system().kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-')))
        .figure("volts-to-neutral", Units.VOLT, "nominal volts from a leg to the neutral", (f, s) -> s.system().legToNeutralVolts())
        .figure("rating", Dimension.CURRENT, "its rating", (f, s) -> s.rating()).stated("its rating in the line of the service")
        .thing("wiring", Kind.WIRING, "of its run", (f, s) -> s.run().map(r -> r.wiring()))
        .stated("run 20 m of 4/0 Al triplex in the service", "run 65 ft of 4/0 Al triplex in the service")
        .size("size", "of the hots of its run", (f, s) -> s.run().map(r -> r.wiring().hot().size()))
        .stated("run 20 m of 4/0 Al triplex in the service", "run 65 ft of 4/0 Al triplex in the service")
        .size("least-bonding", "least supply-side bonding jumper in the raceway or sheath of one set of its run",
            SupplyProperties::leastBonding)
        .rests(Doubt.SERVICE)
        .size("least-size", "least hot for its rating, where it carries the whole of one dwelling on two hots and no sets in parallel",
            ServiceConductor::least)
        .figure("largest-rating", Dimension.CURRENT,
            "largest standard rating that its run may carry, where least-size is absent and one main limits it to the rating",
            ServiceConductor::largestRating)
        .figure("calculated-current", Dimension.CURRENT, "its calculated load, by the smallest of the methods that apply",
            ServiceConductor::calculated)
        .number("mains", "its disconnects: one for each panel straight on it that has a main", ServiceConductor::mains)
        .truth("carries-load",
            "whether the hots of its run have the ampacity that the load calculated for it needs; not known where that cannot be"
                + " calculated or is above its rating, and for the whole of one dwelling, whose conductors may be smaller",
            (f, s) -> SupplyCheck.of(f, s).map(SupplyCheck::carries).orElse(null))
        .figure("load-needs", Dimension.CURRENT, "ampacity that the calculated load needs",
            (f, s) -> SupplyCheck.of(f, s).map(c -> tenth(c.needs())))
        .figure("load-has", Dimension.CURRENT, "ampacity that the hots of its run have for that",
            (f, s) -> SupplyCheck.of(f, s).map(c -> tenth(c.has())))
        .words("load-sum", "what the calculated load is, with its continuous part", (f, s) -> SupplyCheck.of(f, s).map(SupplyCheck::sum))
        .size("load-size", "smallest hot of the same metal that carries the calculated load", SupplyCheck::least)
        .truth("neutral-carries",
            "whether the neutral of its run has the ampacity that the unbalanced load calculated for it needs",
            (f, s) -> FeederNeutral.of(f, s).map(FeederNeutral::carries).orElse(null))
        .figure("neutral-needs", Dimension.CURRENT, "ampacity that the unbalanced load needs, at most the rating",
            (f, s) -> FeederNeutral.of(f, s).map(c -> tenth(c.needs())))
        .figure("neutral-has", Dimension.CURRENT, "ampacity that its neutral has for that",
            (f, s) -> FeederNeutral.of(f, s).map(c -> tenth(c.has())))
        .size("neutral-size", "smallest neutral of the same metal that carries the unbalanced load", FeederNeutral::least)
        .words("ampacity-sum", "how the ampacity of its run is calculated, and which column or terminals limit it",
            SupplyProperties::ampacityWords)
        .figure("ampacity", Dimension.CURRENT, "of its run",
            (f, s) -> s.run().flatMap(r -> f.conductors().ampacities().of(f.conductors().runs().of(r, s.system(), r.wiring().hot())))
                .flatMap(a -> a.allowed().quantity()))
        .figure("source-current", Units.AMPERE, "sum of what sources feed back to it", Interconnection::amperes)
        .rests(Properties.LOADS)
        .truth("surge-protection", "whether it has a surge protector", (f, s) -> s.flags().get("surge-protection"))
        .stated("surge-protection or no surge-protection in the service")
        .truth("outdoor-disconnect", "whether it is switched off outdoors, in reach of the fire service",
            (f, s) -> s.flags().get("outdoor-disconnect"))
        .stated("outdoor-disconnect or no outdoor-disconnect in the service")
        .truth("gas-bonded", "whether metal gas piping is bonded", (f, s) -> s.flags().get("gas-bonded"))
        .stated("gas-bonded or no gas-bonded in the service")
        .truth("water-bonded", "whether metal water piping is bonded", (f, s) -> s.flags().get("water-bonded"))
        .stated("water-bonded or no water-bonded in the service")
        .truth("intersystem-bonding", "whether a terminal for bonding telephone, cable and antenna is there",
            (f, s) -> s.flags().get("intersystem-bonding"))
        .stated("intersystem-bonding or no intersystem-bonding in the service")
        .truth("electrodes-used", "whether every electrode that the plan says is present at its building is used as one",
            (f, s) -> PresentElectrodes.used(s.flags(), s.electrodes()))
        .rests(Doubt.ELECTRODES, Doubt.SERVICE)
        .stated("buried-water-pipe, footing-rebar and steel-frame, each with no if absent, in the service")
        .words("unused-electrode", "the first that is not", (f, s) -> PresentElectrodes.unused(s.flags(), s.electrodes()))
        .words("unused-line", "the line that would use it", (f, s) -> PresentElectrodes.line(s.flags(), s.electrodes()))
        .truth("burns-gas", "whether a dwelling of the plan says that gas is burnt in it",
            (f, s) -> f.house().dwellings().values().stream().anyMatch(d -> d.flags().stream().anyMatch(w -> w.startsWith("gas-"))))
        .rests(Doubt.DWELLING)
        .number("dwelling-count",
            "dwellings of the plan: for each dwelling block the number of identical dwellings it states, otherwise one; where there "
                + "is no block, one, or"
                + " none where no room is in a dwelling",
            (f, s) -> f.isResidential() ? Math.max(1, f.house().dwellings().values().stream().mapToDouble(Dwelling::count).sum()) : 0)
        .rests(Doubt.DWELLING)
        .things("electrodes", Kind.ELECTRODE, "its grounding electrodes, except those to be removed",
            (f, s) -> staying(s.electrodes().stream().map(e -> new ElectrodeOf(s, Optional.empty(), e)).toList()))
        .rests(Doubt.ELECTRODES)
        .things("panels", Kind.PANEL, "panels straight from it",
            (f, s) -> f.house().panels().values().stream()
                .filter(p -> p.supply() instanceof PanelSupply.FromService from && from.service().equals(s.name())).toList())
        .rests(Doubt.PANELS, Doubt.SUPPLY, Doubt.SERVICES)
        .words("status", "new, existing or to-remove", (f, s) -> f.statusWord(s.status())).rests(Doubt.SERVICE, Doubt.STATUS);
    return RacewayProperties.addTo(properties, (f, s) -> s.run().map(Stretch::wiring), (f, s) -> s.run().flatMap(Stretch::length)).made();
  }

  static Map<String, Property> electrode() {
    return new Properties<>(ElectrodeOf.class, Doubt.ELECTRODES)
        .words("electrode", "rod, rods, pipe, plate, water-pipe, concrete, ring or steel", (f, e) -> Optional.of(e.electrode().kind()))
        .figure("resistance", Dimension.RESISTANCE, "to remote earth", (f, e) -> e.electrode().resistance()).stated("25 ohm on the "
            + "earth line")
        .size("size", "of its conductor", (f, e) -> e.electrode().conductor().map(w -> w.hot().size())).stated("by 6 Cu on the earth line")
        .size("least-size", "least conductor for the service, or for the feeder of the other"
            + " building", SupplyProperties::leastElectrode)
        .rests(Doubt.ELECTRODES, Doubt.SERVICE)
        .words("metal", "of its conductor", (f, e) -> e.electrode().conductor().map(w -> w.hot().metal().word()))
        .thing("service", Kind.SERVICE, "that it grounds", (f, e) -> Optional.of(e.service())).sure()
        .thing("panel", Kind.PANEL, "of another building, where it is", (f, e) -> e.panel()).sure()
        .words("at", "name of the service or panel where it is",
            (f, e) -> Optional.of(e.panel().map(Panel::name).orElse(e.service().name())))
        .sure()
        .thing("conductor", Kind.WIRING, "its conductor", (f, e) -> e.electrode().conductor())
        .words("status", "new, existing or to-remove", (f, e) -> f.statusWord(e.electrode().status()))
        .made();
  }

  private static Optional<WireSize> leastElectrode(Facts facts, ElectrodeOf e) {
    Optional<Wiring> service = e.panel().map(Panel::feeder).orElse(e.service().run()).map(Stretch::wiring);
    Optional<Wiring> conductor = e.electrode().conductor();
    if (service.isEmpty() || conductor.isEmpty()) {
      return Optional.empty();
    }
    String kind = e.electrode().kind().equals("rods") ? "rod" : e.electrode().kind();
    return size(
        facts.conductors().grounds()
            .forElectrode(service.get().wholeSize(), service.get().hot().metal(), kind, conductor.get().hot().metal()));
  }

  /** 250.102(C): by the hots of each raceway, and not by those of all sets together. */
  private static Optional<WireSize> leastBonding(Facts facts, Service service) {
    return service.run().map(Stretch::wiring).filter(w -> w.ground().isPresent())
        .flatMap(w -> size(facts.conductors().grounds().forBonding(w.hot().size(), w.hot().metal(), w.ground().get().metal())));
  }

  private static List<ElectrodeOf> staying(List<ElectrodeOf> electrodes) {
    return electrodes.stream().filter(e -> e.electrode().status() != Status.TO_REMOVE).toList();
  }

  static Optional<WireSize> size(Optional<Derivation> derivation) {
    return derivation.flatMap(d -> d.value() instanceof Value.Size s ? Optional.of(s.size()) : Optional.empty());
  }

  static Map<String, Property> panel() {
    return new Properties<>(Panel.class, Doubt.PANEL)
        .words("name", "its name", (f, p) -> Optional.of(p.name())).sure()
        .words("title", "its label, or else its name", (f, p) -> Optional.of(p.title())).sure()
        .words("use", "what it is, where the plan says so, such as outbuilding", (f, p) -> p.kind())
        .words("status", "new, existing or to-remove", (f, p) -> f.statusWord(p.status())).rests(Doubt.STATUS)
        .truth("electrodes-used", "whether every electrode that the plan says is present at its building is used as one",
            (f, p) -> p.kind().isEmpty() ? Boolean.TRUE : PresentElectrodes.used(p.flags(), p.electrodes()))
        .rests(Doubt.ELECTRODES, Doubt.PANEL)
        .stated("buried-water-pipe, footing-rebar and steel-frame, each with no if absent, in the panel")
        .words("unused-electrode", "the first that is not", (f, p) -> PresentElectrodes.unused(p.flags(), p.electrodes()))
        .words("unused-line", "the line that would use it", (f, p) -> PresentElectrodes.line(p.flags(), p.electrodes()))
        .things("electrodes", Kind.ELECTRODE,
            "the grounding electrodes at it, in a building other than the service's, except those to be removed",
            (f, p) -> staying(f.electrodesOf(p)))
        .rests(Doubt.PANEL, Doubt.ELECTRODES)
        .truth("at-service", "whether it is fed straight from the service", (f, p) -> p.supply() instanceof PanelSupply.FromService)
        .rests(Doubt.SUPPLY)
        .truth("bonded", "whether neutral and ground are joined in it", (f, p) -> p.bonded()).rests(Doubt.PANEL)
        .truth("has-main", "whether it has a main that opens",
            (f, p) -> opens(p))
        .figure("main", Dimension.CURRENT, "rating of its main", (f, p) -> p.main().flatMap(m -> m.rating()))
        .figure("bus", Dimension.CURRENT, "rating of its bus", (f, p) -> p.busRating()).stated("bus 200 A in the panel")
        .figure("slots", Dimension.NONE, "how many slots it has", (f, p) -> p.slotCount().map(n -> Quantity.of(n, Units.ONE)))
        .number("handles", "how many handles to open to kill its bus: 1 for a main, otherwise one for each breaker that is not spare",
            (f, p) -> opens(p) ? 1 : (int) p.breakers().stream().filter(b -> !(b.target() instanceof Breaker.Target.Spare)).count())
        .rests(Doubt.SLOTS, Doubt.PANEL, Doubt.TARGET)
        .number("poles-used", "poles of all breakers in it", (f, p) -> p.breakers().stream().mapToInt(b -> b.poles().size()).sum())
        .rests(Doubt.SLOTS)
        .number("free-slots", "slots with nothing in them", SupplyProperties::freeSlots).rests(Doubt.SLOTS, Doubt.PANEL, Doubt.LEGS)
        .figure("interrupting", Dimension.CURRENT, "fault current that it is marked for",
            (f, p) -> Optional.ofNullable(p.facts().get("interrupting")).or(() -> p.main().flatMap(m -> m.interrupting())))
        .figure("height", Dimension.LENGTH, "of its highest handle over the floor", (f, p) -> Optional.ofNullable(p.facts().get("height")))
        .stated("height 1.7 m in the panel", "height 66 in in the panel")
        .figure("working-depth", Dimension.LENGTH, "depth of the working space in front of it",
            (f, p) -> Optional.ofNullable(p.facts().get("working-depth")))
        .stated("working-depth 1 m in the panel", "working-depth 36 in in the panel")
        .figure("working-width", Dimension.LENGTH, "width of the working space in front of it",
            (f, p) -> Optional.ofNullable(p.facts().get("working-width")))
        .stated("working-width 0.8 m in the panel", "working-width 30 in in the panel")
        .figure("working-height", Dimension.LENGTH, "height of the working space in front of it",
            (f, p) -> Optional.ofNullable(p.facts().get("working-height")))
        .stated("working-height 2.1 m in the panel", "working-height 80 in in the panel")
        .truth("over-steps", "whether it is over the steps of a stair", (f, p) -> p.flags().get("over-steps"))
        .stated("over-steps or no over-steps in the panel")
        .truth("readily-accessible", "whether a person can reach it without climbing or moving anything",
            (f, p) -> p.flags().get("readily-accessible"))
        .stated("readily-accessible in the panel")
        .figure("drop-before", Dimension.NONE, "voltage lost on the feeders between the service and it, as a part of the nominal voltage",
            Drop::before)
        .rests(Properties.LOADS)
        .figure("drop-whole", Dimension.NONE, "voltage lost from the service to the downstream box with the lowest voltage", Drop::whole)
        .rests(Properties.LOADS)
        .thing("worst-branch", Kind.BRANCH, "its branch that loses most of its voltage", Drop::worst).rests(Properties.LOADS)
        .truth("metal-path", "whether metal other than its feeder, such as a water pipe, joins its building to that which feeds it",
            (f, p) -> p.flags().get("metal-path"))
        .rests(Doubt.PANEL, Doubt.FEEDER, Doubt.SUPPLY)
        .stated("metal-path or no metal-path in the panel")
        .truth("bonded-beside-ground", "whether neutral and ground are joined in it and a ground comes with its feeder too",
            (f, p) -> p.bonded() && !(p.supply() instanceof PanelSupply.FromService) && p.feeder().map(GroundPath::has).orElse(true))
        .rests(Doubt.PANEL, Doubt.FEEDER, Doubt.SUPPLY)
        .words("bond-flow", "what flows over the ground of its feeder where neutral and ground are joined in it", GroundPath::flow)
        .rests(Properties.LOADS)
        .thing("room", Kind.ROOM, "the room that it is in", (f, p) -> p.room().map(f.house().rooms()::get))
        .stated("room utility in the panel")
        .figure("load", Units.VOLT_AMPERE, "connected load", (f, p) -> f.loads().panel(p.name()).total()).rests(Properties.LOADS)
        .figure("imbalance", Units.PERCENT, "the largest difference of a leg from the mean, by connected load",
            (f, p) -> 100 * f.loads().panel(p.name()).imbalance(p.system()))
        .rests(Properties.LOADS)
        .figure("difference", Units.VOLT_AMPERE, "heaviest leg less lightest", (f, p) -> f.loads().panel(p.name()).difference(p.system()))
        .rests(Properties.LOADS)
        .figure("supply-rating", Dimension.CURRENT, "rating of the breaker or service that feeds it", SupplyProperties::supplyRating)
        .rests(Doubt.SUPPLY, Doubt.RATING, Doubt.SERVICE)
        .figure("back-fed", Units.AMPERE, "sum of the breakers of sources that feed it",
            (f, p) -> p.breakers().stream().filter(b -> b.backFed()).mapToDouble(b -> b.amperes().orElse(0.0)).sum())
        .rests(Doubt.SLOTS, Doubt.TRAITS, Doubt.RATING)
        .figure("source-current", Units.AMPERE,
            "total backfeed of sources on its branches, and downstream of panels that it feeds, while it has its supply",
            Interconnection::amperes)
        .rests(Properties.LOADS)
        .figure("bus-protection", Dimension.CURRENT,
            "rating of what opens before its bus is overloaded from its supply: its main or the breaker of its feeder, whichever is less",
            Interconnection::protection)
        .rests(Doubt.SUPPLY, Doubt.RATING, Doubt.SERVICE)
        .figure("terminals", Dimension.TEMPERATURE, "what the terminals of its feeder are marked for",
            (f, p) -> p.incoming().temperature())
        .truth("takes-aluminum",
            "whether the terminals of its feeder are marked for aluminum; not known where no metal is stated",
            (f, p) -> p.incoming().take(Metal.ALUMINUM).orElse(null))
        .stated("terminals with Cu or Al in the panel")
        .truth("takes-copper", "whether the terminals of its feeder are marked for copper; not known where no metal is stated",
            (f, p) -> p.incoming().take(Metal.COPPER).orElse(null))
        .thing("feeder", Kind.FEEDER, "the run that feeds it", (f, p) -> p.feeder().map(r -> new FeederOf(p, r)))
        .rests(Doubt.FEEDER, Doubt.SUPPLY)
        .thing("service", Kind.SERVICE, "the service that feeds it in the end", (f, p) -> f.house().serviceOf(p))
        .rests(Doubt.SUPPLY, Doubt.SERVICES)
        .things("breakers", Kind.BREAKER, "breakers in it", (f, p) -> p.breakers()).rests(Doubt.SLOTS)
        .things("branches", Kind.BRANCH, "branches that start at it", (f, p) -> f.branchesOf(p))
        .rests(Doubt.BRANCHES, Doubt.FED, Doubt.SLOTS, Doubt.TARGET)
        .made();
  }

  private static boolean opens(Panel panel) {
    return panel.main().filter(m -> m.kind() != wattle.model.MainDevice.Kind.LUGS).isPresent();
  }

  private static Terminals terminals(Facts facts, Breaker breaker) {
    return facts.house().panels().get(breaker.id().panel()).terminalsOf(breaker);
  }

  private static Set<String> wireMetals(Facts facts, Breaker breaker) {
    Set<String> metals = new TreeSet<>();
    Stream<Wiring> wirings = Stream.concat(
        facts.house().panelOf(breaker).flatMap(Panel::feeder).stream().map(Stretch::wiring),
        facts.house().branchOf(breaker).stream().flatMap(b -> b.sections().stream()).filter(s -> s.from() == 0).map(Section::wiring));
    wirings.forEach(w -> metals.add(w.hot().metal().word()));
    return metals;
  }

  private static int freeSlots(Facts facts, Panel panel) {
    Set<Integer> taken = panel.breakers().stream().flatMap(b -> b.poles().stream()).map(p -> p.slot().number()).collect(Collectors.toSet());
    return Math.max(0, panel.slotCount().orElse(taken.size()) - taken.size());
  }

  /** As the trade writes amperes. */
  private static Quantity tenth(double amperes) {
    return Quantity.of(Math.round(amperes * 10 + 1e-6) / 10.0, Units.AMPERE);
  }

  static Optional<Quantity> supplyRating(Facts facts, Panel panel) {
    if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      return facts.breaker(from.breaker()).flatMap(Breaker::rating);
    }
    return facts.house().serviceOf(panel).flatMap(Service::rating);
  }

  static Map<String, Property> breaker() {
    return new Properties<>(Breaker.class, Doubt.TRAITS)
        .words("name", "panel and slots, such as P/2+4", (f, b) -> Optional.of(b.id().toString())).sure()
        .words("label", "what its label says", (f, b) -> b.label()).sure()
        .words("status", "new, existing or to-remove", (f, b) -> f.statusWord(b.status())).rests(Doubt.STATUS)
        .words("device", "breaker or fuse", (f, b) -> Optional.of(b.device().name().toLowerCase(java.util.Locale.ROOT)))
        .words("base", "what a fuse sits in: edison-base, type-s or cartridge", (f, b) -> b.base().map(x -> x.word())).sure()
        .figure("rating", Dimension.CURRENT, "its rating", (f, b) -> b.rating()).rests(Doubt.RATING)
        .figure("next-standard", Dimension.CURRENT, "the least standard rating not below its own",
            (f, b) -> b.rating().flatMap(r -> f.conductors().breakers().notBelow(Derivation.stated("rating", "I", r)))
                .flatMap(d -> d.quantity()))
        .rests(Doubt.RATING)
        .figure("interrupting", Dimension.CURRENT, "fault current that it can open", (f, b) -> b.interrupting())
        .number("poles", "number of poles", (f, b) -> b.poles().size()).rests(Doubt.HANDLE)
        .words("handle", "single, common-trip or tied",
            (f, b) -> Optional.of(b.handle().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-')))
        .rests(Doubt.HANDLE)
        .wordSet("protection", "arc-fault, ground-fault",
            (f, b) -> b.protections().stream().map(Protection::word).collect(Collectors.toCollection(TreeSet::new)))
        .figure("terminals", Dimension.TEMPERATURE, "what its terminals are marked for, by its line or its panel's",
            (f, b) -> terminals(f, b).temperature())
        .rests(Doubt.TRAITS, Doubt.PANEL)
        .truth("takes-aluminum", "whether its terminals are marked for aluminum; not known where no metal is stated",
            (f, b) -> terminals(f, b).take(Metal.ALUMINUM).orElse(null))
        .rests(Doubt.TRAITS, Doubt.PANEL)
        .stated("terminals with Cu or Al on the way")
        .truth("takes-copper", "whether its terminals are marked for copper; not known where no metal is stated",
            (f, b) -> terminals(f, b).take(Metal.COPPER).orElse(null))
        .rests(Doubt.TRAITS, Doubt.PANEL)
        .wordSet("wire-metals", "metals of the wires at its terminals, in words", SupplyProperties::wireMetals)
        .rests(Doubt.TARGET, Doubt.WAY, Doubt.FEEDER, Doubt.BRANCHES)
        .truth("half-size", "whether it takes half a slot", (f, b) -> b.poles().stream().anyMatch(p -> p.slot().half().isPresent()))
        .rests(Doubt.LEGS)
        .truth("back-fed", "whether a source on it feeds the panel", (f, b) -> b.backFed())
        .figure("source-current", Units.AMPERE, "what downstream sources feed back", Interconnection::amperes)
        .rests(Properties.LOADS)
        .truth("interlocked", "whether a mechanism keeps it and the main from being closed together", (f, b) -> b.interlocked())
        .truth("switched-neutral", "whether the neutral of its branch transfers with the hots", (f, b) -> b.switchedNeutral())
        .truth("spare", "whether nothing is on it", (f, b) -> b.target() instanceof Breaker.Target.Spare).rests(Doubt.TARGET)
        .truth("at-end",
            "whether it is in the row farthest from the main, with nothing but sources beyond it; of a center-fed panel at either end",
            Interconnection::atEnd)
        .rests(Doubt.LEGS, Doubt.PANEL)
        .wordSet("legs", "legs of its poles", (f, b) -> b.poles().stream().map(p -> p.leg().map(Leg::name).orElse("?")).toList())
        .rests(Doubt.LEGS, Doubt.SUPPLY)
        .figure("load", Units.VOLT_AMPERE, "connected load downstream", (f, b) -> f.loads().behind(f.house(), b).total())
        .rests(Properties.LOADS)
        .figure("current", Units.AMPERE, "current of its heaviest leg with everything on", SupplyProperties::current)
        .rests(Properties.LOADS)
        .thing("panel", Kind.PANEL, "that it is in", (f, b) -> Optional.ofNullable(f.house().panels().get(b.id().panel()))).sure()
        .thing("branch", Kind.BRANCH, "that it feeds",
            (f, b) -> f.house().branchOf(b))
        .rests(Doubt.TARGET)
        .thing("feeds-panel", Kind.PANEL, "the panel that it feeds",
            (f, b) -> f.house().panelOf(b))
        .rests(Doubt.TARGET)
        .made();
  }

  private static double current(Facts facts, Breaker breaker) {
    Panel panel = facts.house().panels().get(breaker.id().panel());
    if (panel == null) {
      return 0;
    }
    LegLoads load = facts.loads().behind(facts.house(), breaker);
    return load.heaviestAmperes(panel.system());
  }

  static Map<String, Property> feeder() {
    Properties<FeederOf> properties = new Properties<>(FeederOf.class, Doubt.FEEDER)
        .words("name", "of the panel that it feeds", (f, x) -> Optional.of(x.panel().name())).sure()
        .words("status", "new, existing or to-remove, as the panel that it feeds", (f, x) -> f.statusWord(x.panel().status()))
        .rests(Doubt.STATUS)
        .figure("length", Dimension.LENGTH, "its length", (f, x) -> x.stretch().length())
        .thing("wiring", Kind.WIRING, "what it is made with", (f, x) -> Optional.of(x.stretch().wiring()))
        .thing("panel", Kind.PANEL, "that it feeds", (f, x) -> Optional.of(x.panel())).sure()
        .thing("breaker", Kind.BREAKER, "that feeds it",
            (f, x) -> x.panel().supply() instanceof PanelSupply.FromBreaker from ? f.breaker(from.breaker()) : Optional.empty())
        .rests(Doubt.SUPPLY)
        .figure("ampacity", Dimension.CURRENT, "of its hots",
            (f, x) -> f.conductors().ampacities().of(f.conductors().runs().of(x.stretch(), x.panel().system(), x.stretch().wiring().hot()))
                .flatMap(a -> a.allowed().quantity()))
        .rests(Doubt.FEEDER, Doubt.SUPPLY)
        .figure("largest-breaker", Dimension.CURRENT, "largest breaker that protects its hots", SupplyProperties::largest)
        .rests(Doubt.FEEDER, Doubt.SUPPLY, Doubt.PANEL)
        .figure("largest-for-load", Dimension.CURRENT,
            "largest breaker that protects its hots; absent where its load would trip that", BreakerOfFeeder::forLoad)
        .rests(Properties.LOADS)
        .words("breaker-remedy", "what can be done where its breaker is above that", BreakerOfFeeder::remedy).sure()
        .words("ampacity-sum", "how its ampacity is calculated, and which column or terminals limit it", SupplyProperties::ampacityWords)
        .sure()
        .truth("whole-dwelling", "whether it carries all of one dwelling on two hots, at a rating of 100 to 400 A",
            (f, x) -> WholeDwelling.isFor(f, x.panel(), supplyRating(f, x.panel())))
        .rests(Doubt.FEEDER, Doubt.SUPPLY, Doubt.RATING, Doubt.SERVICE, Doubt.DWELLING)
        .truth("carries-load",
            "whether its hots have the ampacity that the load calculated for it needs; not known where that cannot be calculated or is"
                + " above its breaker, and for the whole of one dwelling, whose conductors may be smaller",
            (f, x) -> SupplyCheck.of(f, x).map(SupplyCheck::carries).orElse(null))
        .rests(Properties.LOADS)
        .figure("load-needs", Dimension.CURRENT, "ampacity that the calculated load needs",
            (f, x) -> SupplyCheck.of(f, x).map(c -> tenth(c.needs())))
        .rests(Properties.LOADS)
        .figure("load-has", Dimension.CURRENT, "ampacity that its hots have for that",
            (f, x) -> SupplyCheck.of(f, x).map(c -> tenth(c.has())))
        .rests(Properties.LOADS)
        .words("load-sum", "what the calculated load is, with its continuous part", (f, x) -> SupplyCheck.of(f, x).map(SupplyCheck::sum))
        .sure()
        .size("load-size", "smallest hot of the same metal that carries the calculated load", SupplyCheck::least)
        .rests(Properties.LOADS)
        .truth("neutral-carries",
            "whether its neutral has the ampacity that the unbalanced load calculated for it needs",
            (f, x) -> FeederNeutral.of(f, x).map(FeederNeutral::carries).orElse(null))
        .rests(Properties.LOADS)
        .figure("neutral-needs", Dimension.CURRENT, "ampacity that the unbalanced load needs, at most the rating of its breaker",
            (f, x) -> FeederNeutral.of(f, x).map(c -> tenth(c.needs())))
        .rests(Properties.LOADS)
        .figure("neutral-has", Dimension.CURRENT, "ampacity that its neutral has for that",
            (f, x) -> FeederNeutral.of(f, x).map(c -> tenth(c.has())))
        .rests(Properties.LOADS)
        .size("neutral-size", "smallest neutral of the same metal that carries the unbalanced load", FeederNeutral::least)
        .rests(Properties.LOADS)
        .size("least-ground", "least ground for its breaker, never larger than its hots",
            (f, x) -> rating(f, x).flatMap(r -> LeastGround.forBreaker(f, x.stretch().wiring(), r)))
        .rests(Doubt.FEEDER, Doubt.SUPPLY, Doubt.RATING, Doubt.SERVICE)
        .size("needed-size", "smallest hot that is enough for its breaker, derated and with no rating rounded up",
            SupplyProperties::sufficient)
        .rests(Doubt.FEEDER, Doubt.SUPPLY, Doubt.RATING, Doubt.SERVICE)
        .size("enlarged-ground", "least ground where its hots are larger than needed",
            (f, x) -> rating(f, x).flatMap(r -> sufficient(f, x).flatMap(n -> LeastGround.enlarged(f, x.stretch().wiring(), r, n))))
        .rests(Doubt.FEEDER, Doubt.SUPPLY, Doubt.RATING, Doubt.SERVICE)
        .figure("drop", Dimension.NONE,
            "voltage lost along it at the load calculated for it, or at what is connected, as a part of the nominal voltage",
            Drop::ofFeeder)
        .rests(Properties.LOADS)
        .figure("load", Dimension.CURRENT, "current that its drop is figured with",
            (f, x) -> Drop.amperes(f, x.panel()).map(a -> Quantity.of(a, Units.AMPERE)))
        .rests(Properties.LOADS)
        .size("drop-size", "smallest hot of the same metal in which it would lose at most 3 %", (f, x) -> Drop.sizeWithin(f, x, advised(f)))
        .rests(Properties.LOADS)
        .words("drop-remedy", "how to keep it within 3 %: the size, or the length that its conductors are good for", Drop::remedy)
        .rests(Properties.LOADS)
        .truth("ground-path", "whether it brings a ground: a wire, or a metal raceway", (f, x) -> GroundPath.has(x.stretch()))
        .rests(Doubt.FEEDER, Doubt.SUPPLY, Doubt.PANEL)
        .words("grounded",
            "its wiring with the smallest ground that its breaker requires and that withstands a fault at its panel; not known"
                + " for a cable that is not made with one",
            (f, x) -> GroundedFeeder.of(f, x).map(Wiring::text))
        .rests(Doubt.FEEDER, Doubt.SUPPLY, Doubt.RATING, Doubt.SERVICE)
        .words("grounded-order", "what to run for it to have that ground, in the imperative",
            (f, x) -> Optional.of(GroundedFeeder.order(f, x)))
        .sure()
        .words("place", "where it runs", (f, x) -> x.stretch().surroundings().place())
        .truth("underground", "whether it is buried", (f, x) -> x.stretch().surroundings().underground())
        .figure("depth", Dimension.LENGTH, "of its burial", (f, x) -> x.stretch().surroundings().buried())
        .stated("buried 0.6 m in the line of the panel", "buried 24 in in the line of the panel")
        .figure("from-edge", Dimension.LENGTH, "the least distance from the edge of the framing that it goes through or along",
            (f, x) -> x.stretch().surroundings().fromEdge())
        .stated("from-edge 35 mm or nail-plated in the line of the panel", "from-edge 1.5 in or nail-plated in the line of the panel")
        .truth("nail-plated", "whether steel plates protect it where it is nearer to that edge",
            (f, x) -> x.stretch().surroundings().nailPlated());
    return RacewayProperties.addTo(properties, (f, x) -> Optional.of(x.stretch().wiring()), (f, x) -> x.stretch().length()).made();
  }

  /** Part of the voltage that a feeder or a branch is advised to lose at most. */
  static double advised(Facts facts) {
    return facts.library().limit("voltage-fall-branch").map(l -> l.value().si()).orElse(0.03);
  }

  private static Optional<Derivation> rating(Facts facts, FeederOf feeder) {
    return supplyRating(facts, feeder.panel()).map(r -> Derivation.stated("rating", "I", r));
  }

  static Conditions conditions(Facts facts, FeederOf feeder) {
    return facts.conductors().runs().of(feeder.stretch(), feeder.panel().system(), feeder.stretch().wiring().hot());
  }

  static Optional<WireSize> needed(Facts facts, FeederOf feeder) {
    return needed(facts, feeder, true);
  }

  /** What a ground is held against, as {@link CircuitCheck#sufficient}. */
  static Optional<WireSize> sufficient(Facts facts, FeederOf feeder) {
    return needed(facts, feeder, false);
  }

  private static Optional<WireSize> needed(Facts facts, FeederOf feeder, boolean mayRoundUp) {
    Conditions conditions = conditions(facts, feeder);
    Optional<WireSize> usual = rating(facts, feeder)
        .flatMap(r -> size(facts.conductors().sizes().forBreaker(r, conditions, marked(facts, feeder, r), mayRoundUp)));
    Optional<Quantity> rating = supplyRating(facts, feeder.panel());
    if (!WholeDwelling.isFor(facts, feeder.panel(), rating)) {
      return usual;
    }
    return WholeDwelling.least(facts, rating.get(), conditions, facts.conductors().terminations().marked(feeder.panel()))
        .filter(s -> usual.filter(u -> u.compareTo(s) < 0).isEmpty()).or(() -> usual);
  }

  private static Optional<Derivation> marked(Facts facts, FeederOf feeder, Derivation rating) {
    return facts.conductors().terminations().of(feeder.panel(), feeder.stretch(), rating);
  }

  private static Optional<String> ampacityWords(Facts facts, FeederOf feeder) {
    Conditions conditions = conditions(facts, feeder);
    Optional<Quantity> rated = supplyRating(facts, feeder.panel());
    Optional<Derivation> stated = facts.conductors().terminations().marked(feeder.panel());
    Optional<String> words = ampacityWords(facts, conditions, feeder.stretch().wiring(), rating(facts, feeder),
        rating(facts, feeder).flatMap(r -> marked(facts, feeder, r)));
    return WholeDwelling.isFor(facts, feeder.panel(), rated)
        ? Optional.of(WholeDwelling.words(facts, rated.get(), conditions, stated))
        : words;
  }

  private static Optional<String> ampacityWords(Facts facts, Service service) {
    Optional<Derivation> rating = service.rating().map(r -> Derivation.stated("rating", "I", r));
    if (service.run().isEmpty() || rating.isEmpty()) {
      return Optional.empty();
    }
    Conditions conditions = ServiceConductor.conditions(facts, service);
    Optional<Derivation> marked = ServiceConductor.marked(facts, service);
    return WholeDwelling.isFor(facts, service)
        ? Optional.of(WholeDwelling.words(facts, service.rating().get(), conditions, marked))
        : ampacityWords(facts, conditions, service.run().get().wiring(), rating, marked);
  }

  private static Optional<String> ampacityWords(
      Facts facts, Conditions conditions, Wiring wiring, Optional<Derivation> rating, Optional<Derivation> marked) {
    var ampacities = facts.conductors().ampacities();
    Optional<Derivation> celsius = marked.or(() -> rating.flatMap(ampacities::unmarked));
    Optional<Derivation> ends = rating.flatMap(r -> ampacities.atTerminals(conditions.size(), conditions.metal(), r, celsius));
    return AmpacityWords.of(facts, conditions, wiring, ends, celsius.flatMap(Derivation::quantity));
  }

  static Optional<Quantity> largest(Facts facts, FeederOf feeder) {
    Wire hot = feeder.stretch().wiring().hot();
    Conditions conditions = conditions(facts, feeder);
    Optional<Quantity> usual = rating(facts, feeder)
        .flatMap(r -> facts.conductors().ampacities().between(conditions, r, marked(facts, feeder, r)))
        .flatMap(a -> facts.conductors().breakers().largestFor(a, hot.size(), hot.metal(), true))
        .flatMap(Derivation::quantity);
    Optional<Quantity> rating = supplyRating(facts, feeder.panel());
    if (!WholeDwelling.isFor(facts, feeder.panel(), rating)) {
      return usual;
    }
    return WholeDwelling.largest(facts, rating.get(), hot, conditions, facts.conductors().terminations().marked(feeder.panel()))
        .filter(q -> usual.filter(u -> u.si() > q.si()).isEmpty())
        .or(() -> usual);
  }
}
