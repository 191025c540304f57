package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.evaluate.Evaluator;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.finding.Placement;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.library.Library;
import wattle.memo.Once;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.Doubts;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.model.Origin;
import wattle.model.Panel;
import wattle.model.Raceway;
import wattle.model.Service;
import wattle.model.SupplySystem;
import wattle.model.Surroundings;
import wattle.model.Trial;
import wattle.pattern.Expander;
import wattle.quantity.Quantity;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * Trees to house. In order: constants; services; panels from the service down, so that
 * the legs of their slots are known; rooms with boxes and devices; branches traced box by box; which branch feeds each
 * device; which hot it sits on; what switches control; the role of every conductor; loads; and last how branches and
 * breakers fit. Each step keeps what it could read, so that one mistake is one finding.
 */
public final class Binder {
  private final Scope scope;
  private final Map<Class<?>, List<Tree.Item>> items;
  private final Memory memory;
  /** Branches of which a mistake has left something out; those that end in later have been written as far as they go. */
  private Set<String> broken = Set.of();

  private Binder(Scope scope, List<Tree.Item> items, Memory memory) {
    this.scope = scope;
    this.items = items.stream().collect(Collectors.groupingBy(Tree.Item::getClass));
    this.memory = memory;
  }

  /**
   * Binds a house.
   *
   * @param plan the text that it is described in
   * @param codes names of the code packs that it is under
   * @param library with what its own files add
   * @param files its own files as trees, the plan first
   * @param written what they say, patterns placed
   * @param before what was found in reading them, which may leave things in doubt as well
   * @param memory what was made the last time; new where nothing is known
   * @param placement where the spans of the trees stand; those of what was found before are in place
   */
  public static Checked<House> bind(
      Source plan, List<String> codes, Library library, List<PlanTree> files, Expander.Expanded written, List<Finding> before,
      Memory memory, Placement placement) {
    Scope scope = new Scope(library, files, written.spoiled());
    Binder binder = new Binder(scope, written.items(), memory);
    House house = binder.house(plan, codes, written);
    List<Finding> findings = new ArrayList<>(before);
    findings.addAll(scope.findings());
    Doubts doubts = DoubtFinder.of(findings, house, files, written.items(), binder.broken, placement);
    return new Checked<>(house.doubting(doubts), scope.findings());
  }

  /**
   * Binds trials that stand beside a house which is bound already, as they would be bound in its plan; nothing of the house is
   * read again.
   *
   * @param files of the plan, whose constants the trials may use
   * @return findings of the text alone
   */
  public static Checked<List<Trial>> trials(Source text, House house, Library library, List<PlanTree> files) {
    Checked<PlanTree> parsed = PlanParser.parse(text);
    Scope scope = new Scope(library, List.of(parsed.value()), Set.of());
    List<Tree.Item> constants = files.stream().flatMap(f -> f.items().stream()).filter(Tree.Let.class::isInstance).toList();
    new Binder(scope, constants, new Memory()).bindConstants();
    List<Tree.Trial> trees = parsed.value().items().stream().filter(Tree.Trial.class::isInstance).map(Tree.Trial.class::cast).toList();
    List<Trial> trials = new TrialBinder(scope, house.devices(), house.boxes().keySet(), house.branches(), house.panels(),
        house.services().keySet()).trials(trees);
    List<Finding> findings = new ArrayList<>(parsed.findings());
    scope.findings().stream().filter(f -> f.place().filter(m -> m.span().source().equals(text)).isPresent()).forEach(findings::add);
    return new Checked<>(trials, findings);
  }

  private <T> List<T> all(Class<T> kind) {
    return items.getOrDefault(kind, List.of()).stream().map(kind::cast).toList();
  }

  private House house(Source source, List<String> codes, Expander.Expanded written) {
    bindConstants();
    memory.begin(scope.library(), scope.constants());
    Map<String, Service> services = House.byName(new ServiceBinder(scope).bind(all(Tree.Service.class)), Service::name);
    List<Tree.Branch> branchTrees = branchTrees();
    Set<String> branchNames = branchTrees.stream().map(b -> b.name().text()).collect(Collectors.toSet());
    Set<String> roomNames = all(Tree.Room.class).stream().map(r -> r.name().text()).collect(Collectors.toSet());
    Map<String, Panel> panels = new PanelBinder(scope, services, branchNames, roomNames, memory).bind(all(Tree.Panel.class));
    RoomBinder.Bound rooms = new RoomBinder(scope).bind(all(Tree.Room.class), memory);
    Map<String, Raceway> raceways = House.byName(raceways(), Raceway::name);

    Landmarks landmarks = new Landmarks(panels.keySet(), rooms, raceways.keySet());
    List<BranchDraft> traced = new BranchTracer(scope, landmarks).trace(branchTrees, memory);
    List<BranchDraft> drafts = memory.connected(traced, rooms, scope);
    Map<String, List<wattle.model.BranchHot>> hots = BranchFinisher.hotsByBranch(panels);
    drafts.forEach(d -> d.hots = hots.getOrDefault(d.name(), List.of()));
    Map<String, SupplySystem> systems = new HashMap<>();
    panels.values().forEach(p -> systems.put(p.name(), p.system()));
    CircuitBinder.Bound circuits = new CircuitBinder(scope, systems, memory.groups(rooms, scope)).bind(drafts, rooms, memory);
    Map<String, Branch> branches = circuits.branches();
    Map<String, Device> devices = circuits.devices();
    broken = drafts.stream().filter(d -> d.broken && !d.unfinished).map(BranchDraft::name).collect(Collectors.toSet());
    Set<String> unread = drafts.stream().filter(d -> d.broken).map(BranchDraft::name).collect(Collectors.toSet());
    new BranchChecks(scope, panels).check(branches, unread);

    TrialBinder trials = new TrialBinder(scope, devices, rooms.boxes().keySet(), branches, panels, services.keySet());
    Map<String, wattle.model.Trial> trialsByName = House.byName(trials.trials(all(Tree.Trial.class)), wattle.model.Trial::name);
    Map<String, Dwelling> dwellings = House.byName(dwellings(new KnownNames(panels.keySet())), d -> d.name().orElse(""));
    List<String> noted = scope.assumed();
    Optional<Tree.Heading> heading = all(Tree.Heading.class).stream().findFirst();
    return new House(
        source,
        heading.flatMap(Tree.Heading::title).map(Tree.Text::value),
        heading.flatMap(Tree.Heading::revision).map(Tree.Text::value),
        codes,
        dwellings,
        services,
        panels,
        branches,
        raceways,
        rooms.rooms(),
        rooms.boxes(),
        devices,
        trialsByName,
        trials.expectations(all(Tree.Expectation.class), trialsByName.keySet()),
        TrialBinder.silences(all(Tree.Silence.class)),
        written.placements(),
        written.overridden(),
        new Once<>(() -> WrittenUnits.of(dwellings.values(), services.values(), panels.values(), branches.values())),
        new Once<>(() -> assumed(noted, dwellings, services, branches, rooms, devices, systems)),
        Doubts.NONE);
  }

  /** What was taken as usual, the whole house seen: that is looked for when somebody asks, which nobody does between key strokes. */
  private static List<String> assumed(List<String> noted, Map<String, Dwelling> dwellings, Map<String, Service> services,
      Map<String, Branch> branches, RoomBinder.Bound rooms, Map<String, Device> devices, Map<String, SupplySystem> systems) {
    List<String> assumed = new ArrayList<>(noted);
    UnstatedVoltages.assumption(branches.values(), devices, systems).ifPresent(assumed::add);
    assumed.addAll(UnstatedPowerFactors.assumptions(devices.values()));
    if (!rooms.rooms().isEmpty() && !House.isOfDwellings(dwellings.values(), rooms.rooms().values(), services.values())) {
      assumed.add("the plan has no dwelling: no dwelling line, and no room that only dwellings have, such as a bedroom");
    }
    return List.copyOf(assumed);
  }

  private void bindConstants() {
    Map<String, Span> names = new LinkedHashMap<>();
    for (Tree.Let let : all(Tree.Let.class)) {
      if (scope.claim(names, let.name().text(), let.name().span(), "constants")) {
        scope.constants().put(let.name().text(), scope.evaluator().valueOf(let.value()).orElse(Evaluator.WITHOUT_VALUE));
      }
    }
  }

  private List<Tree.Branch> branchTrees() {
    Map<String, Span> names = new LinkedHashMap<>();
    all(Tree.Panel.class).forEach(p -> names.putIfAbsent(p.name().text(), p.name().span()));
    List<Tree.Branch> kept = new ArrayList<>();
    for (Tree.Branch tree : all(Tree.Branch.class)) {
      if (scope.claim(names, tree.name().text(), tree.name().span(), "branches or panels")) {
        kept.add(tree);
      }
    }
    return kept;
  }

  private List<Raceway> raceways() {
    Map<String, Span> names = new LinkedHashMap<>();
    SurroundingsBinder surroundings = new SurroundingsBinder(scope);
    WiringBinder wirings = new WiringBinder(scope);
    List<Raceway> raceways = new ArrayList<>();
    for (Tree.Raceway tree : all(Tree.Raceway.class)) {
      if (scope.claim(names, tree.name().text(), tree.name().span(), "raceways")) {
        raceways.add(
            new Raceway(
                tree.name().text(),
                Scope.label(tree.label()),
                tree.size().flatMap(wirings::race),
                tree.length().flatMap(l -> ServiceBinder.lengthOf(l, scope, "the length of a raceway")),
                surroundings.bind(tree.surroundings(), Surroundings.UNSTATED),
                Scope.status(tree.status()),
                new Origin(tree.name().span(), tree.span())));
      }
    }
    return raceways;
  }

  private List<String> panelsOf(Tree.Dwelling tree, KnownNames known) {
    List<String> panels = new ArrayList<>();
    for (Tree.Word name : tree.panels()) {
      if (known.names().contains(name.text())) {
        panels.add(name.text());
        continue;
      }
      Finding.Builder finding = Finding.error(Mistake.NAME_UNKNOWN, "no panel is called '" + name + "'").at(name.span(),
          "the panel of a dwelling is expected here");
      scope.near(name.text(), name.span(), known).forEach(n -> finding.fix(Fix.safe("write " + n, name.span(), n)));
      scope.report(finding);
    }
    return panels;
  }

  private List<Dwelling> dwellings(KnownNames panels) {
    List<Dwelling> dwellings = new ArrayList<>();
    for (Tree.Dwelling tree : all(Tree.Dwelling.class)) {
      Map<String, Boolean> said = new LinkedHashMap<>();
      Map<String, Quantity> facts = Facts.OF_DWELLING.read(tree.facts(), scope, said);
      said.values().removeIf(so -> !so);
      dwellings.add(
          new Dwelling(
              tree.name().map(Tree.Word::text), Scope.label(tree.label()), panelsOf(tree, panels), facts, said.keySet(),
              new Origin(tree.name().map(Tree.Word::span).orElse(tree.span()), tree.span())));
    }
    return dwellings;
  }
}
