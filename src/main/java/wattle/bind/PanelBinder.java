package wattle.bind;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Leg;
import wattle.model.MainDevice;
import wattle.model.Origin;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Pole;
import wattle.model.Service;
import wattle.model.Slot;
import wattle.model.SlotOrder;
import wattle.model.Status;
import wattle.model.Stretch;
import wattle.model.SupplySystem;
import wattle.model.Surroundings;
import wattle.model.Terminals;
import wattle.model.Words;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.syntax.Tree;

/**
 * Panels, from the service downwards: a panel's legs are known once those of the panel that feeds it are. A sub-panel
 * takes the legs of the poles that feed it, A before B, so that a letter means the same leg in the whole house.
 */
final class PanelBinder {
  private static final SupplySystem UNSTATED = new SupplySystem(SupplySystem.Kind.SPLIT_PHASE, 120, 240);

  private final Scope scope;
  private final Map<String, Service> services;
  private final WiringBinder wirings;
  private final SurroundingsBinder surroundings;
  private final Map<String, Draft> drafts = new LinkedHashMap<>();
  private final Map<String, List<Way>> waysTo = new HashMap<>();
  private final Map<String, Panel> done = new LinkedHashMap<>();
  /** Panels at which a row of feeders is cut. */
  private Set<String> cut = Set.of();
  private final Set<String> branchNames;
  private final KnownNames roomNames;
  private final Set<String> panelNames = new HashSet<>();
  private KnownNames feeds = new KnownNames(Set.of());
  private final Memory memory;

  PanelBinder(Scope scope, Map<String, Service> services, Set<String> branchNames, Set<String> roomNames, Memory memory) {
    this.scope = scope;
    this.services = services;
    this.branchNames = branchNames;
    this.roomNames = new KnownNames(roomNames);
    this.memory = memory;
    this.wirings = new WiringBinder(scope);
    this.surroundings = new SurroundingsBinder(scope);
  }

  /** What a word of a slot line names. */
  private enum Named {
    PANEL, BRANCH, NOTHING
  }

  /**
   * A panel as written, with its ways.
   *
   * @param named what the words of its slot lines named, in the order written
   */
  record Draft(
      Tree.Panel tree,
      List<Named> named,
      Optional<Quantity> bus,
      Optional<Integer> slots,
      SlotOrder order,
      boolean bonded,
      Optional<MainDevice> main,
      Map<String, Quantity> facts,
      Map<String, Boolean> flags,
      Optional<Tree.Word> room,
      Terminals terminals,
      List<Tree.Earth> earths,
      List<Way> ways) {
    String name() {
      return tree.name().text();
    }
  }

  Map<String, Panel> bind(List<Tree.Panel> trees) {
    Map<String, Span> names = new HashMap<>();
    List<Tree.Panel> kept = new ArrayList<>();
    for (Tree.Panel tree : trees) {
      if (scope.claim(names, tree.name().text(), tree.name().span(), "panels")) {
        kept.add(tree);
      }
    }
    panelNames.addAll(names.keySet());
    Set<String> thingsFed = new HashSet<>(branchNames);
    thingsFed.addAll(panelNames);
    SlotBinder slots = new SlotBinder(scope, thingsFed);
    for (Tree.Panel tree : kept) {
      drafts.put(
          tree.name().text(), memory.panelDrafts.of(tree, scope, d -> Optional.of(d).filter(known -> known.named.equals(named(tree))),
              () -> draft(tree, slots)));
    }
    for (Draft draft : drafts.values()) {
      for (Way way : draft.ways()) {
        way.target().ifPresent(t -> waysTo.computeIfAbsent(t.text(), name -> new ArrayList<>()).add(way));
      }
    }
    cut = FeederRows.cut(drafts.keySet().stream().filter(waysTo::containsKey)
        .collect(Collectors.toMap(name -> name, name -> waysTo.get(name).get(0).id().panel())));
    Set<String> feeding = new HashSet<>(services.keySet());
    feeding.addAll(drafts.keySet());
    feeds = new KnownNames(feeding);
    for (Draft draft : drafts.values()) {
      finish(draft, new ArrayList<>());
    }
    Map<String, Panel> ordered = new LinkedHashMap<>();
    drafts.keySet().forEach(name -> ordered.put(name, done.get(name)));
    return ordered;
  }

  private List<Named> named(Tree.Panel tree) {
    List<Named> named = new ArrayList<>();
    for (Tree.PanelStatement statement : tree.statements()) {
      if (statement instanceof Tree.Slot slot) {
        for (Tree.Word word : slot.words()) {
          String name = word.text();
          named.add(panelNames.contains(name) ? Named.PANEL : branchNames.contains(name) ? Named.BRANCH : Named.NOTHING);
        }
      }
    }
    return named;
  }

  private Draft draft(Tree.Panel tree, SlotBinder slotBinder) {
    Optional<Quantity> bus = Optional.empty();
    Optional<Integer> slots = Optional.empty();
    SlotOrder order = SlotOrder.ODD_LEFT;
    boolean bonded = false;
    Optional<MainDevice> main = Optional.empty();
    List<Tree.Fact> facts = new ArrayList<>();
    Optional<Tree.Word> room = Optional.empty();
    Terminals terminals = Terminals.UNMARKED;
    List<Tree.Earth> earths = new ArrayList<>();
    List<Tree.Slot> lines = new ArrayList<>();
    for (Tree.PanelStatement statement : tree.statements()) {
      if (statement instanceof Tree.Bus b) {
        bus = scope.evaluator().statedOf(b.rating(), Dimension.CURRENT, "the rating of a bus");
      } else if (statement instanceof Tree.SlotCount c) {
        slots = scope.evaluator().countOf(c.count(), "the number of slots", 1, Panel.MOST_SLOTS);
      } else if (statement instanceof Tree.Bonded) {
        bonded = true;
      } else if (statement instanceof Tree.Order o) {
        order = order(o);
      } else if (statement instanceof Tree.Main m) {
        main = Optional.of(main(m));
      } else if (statement instanceof Tree.PanelRoom r) {
        room = Optional.of(r.room());
      } else if (statement instanceof Tree.PanelTerminals t) {
        terminals = TerminalBinder.bind(Optional.of(t.terminals()), scope);
      } else if (statement instanceof Tree.PanelEarth e) {
        earths.add(e.earth());
      } else if (statement instanceof Tree.PanelFact f) {
        facts.add(f.fact());
      } else if (statement instanceof Tree.Slot s) {
        lines.add(s);
      } else {
        throw new AssertionError(statement);
      }
    }
    List<Way> ways = slotBinder.bind(tree.name().text(), lines, slots);
    Map<String, Boolean> flags = new HashMap<>();
    Map<String, Quantity> figures = Facts.OF_PANEL.read(facts, scope, flags);
    return new Draft(tree, named(tree), bus, slots, order, bonded, main, figures, flags, room, terminals, earths, ways);
  }

  private Optional<String> roomOf(Tree.Word room) {
    if (roomNames.names().contains(room.text())) {
      return Optional.of(room.text());
    }
    if (!scope.mayStandInDamage(room.text())) {
      Finding.Builder finding = Finding.error(Mistake.NAME_UNKNOWN, "no room is called '" + room + "'").at(room.span(),
          "the room that the panel is in is expected here");
      scope.near(room.text(), room.span(), roomNames).forEach(n -> finding.fix(Fix.safe("write " + n, room.span(), n)));
      scope.report(finding);
    }
    return Optional.empty();
  }

  private SlotOrder order(Tree.Order order) {
    List<String> words = new ArrayList<>();
    for (SlotOrder each : SlotOrder.values()) {
      if (each.word().equals(order.order().text())) {
        return each;
      }
      words.add(each.word());
    }
    Finding.Builder finding = Finding.error("order-unknown", "no order of slots is called '" + order.order() + "'")
        .at(order.order().span(), String.join(", ", words) + " are known");
    NearNames.of(order.order().text(), words).forEach(n -> finding.fix(Fix.safe("write " + n, order.order().span(), n)));
    scope.report(finding);
    return SlotOrder.ODD_LEFT;
  }

  private MainDevice main(Tree.Main main) {
    Optional<Quantity> rating = Optional.empty();
    Optional<Quantity> interrupting = Optional.empty();
    for (Tree.Expression amount : main.amounts()) {
      Optional<Quantity> value = scope.evaluator().statedOf(amount, Dimension.CURRENT, "the rating of a main");
      boolean kiloamperes = value.isPresent() && value.get().unit().equals(Units.KILOAMPERE);
      Optional<Quantity> before = kiloamperes ? interrupting : rating;
      if (value.isPresent() && before.isPresent()) {
        scope.reportSecond(amount, kiloamperes ? "what a main can interrupt" : "the rating of a main", before.get());
      } else if (kiloamperes) {
        interrupting = value;
      } else if (value.isPresent()) {
        rating = value;
      }
    }
    MainDevice.Kind kind = switch (main.kind().text()) {
      case "fuse" -> MainDevice.Kind.FUSE;
      case "switch" -> MainDevice.Kind.SWITCH;
      case "lugs" -> MainDevice.Kind.LUGS;
      case "transfer" -> MainDevice.Kind.TRANSFER;
      default -> MainDevice.Kind.BREAKER;
    };
    Set<String> traits = new HashSet<>();
    for (Tree.Word word : main.words()) {
      Optional<String> trait = kind == MainDevice.Kind.TRANSFER ? Words.TRANSFER_TRAITS.meant(word.text()) : Optional.empty();
      if (trait.isPresent()) {
        traits.add(trait.get());
      } else {
        scope.report(
            Finding.error(Mistake.WORD_UNKNOWN, "'" + word + "' is not a word for a main")
                .at(word.span(), "a rating such as 200 A, what it can interrupt, and terminals can be written here"
                    + (kind == MainDevice.Kind.TRANSFER ? "; of a transfer switch automatic and load-managed" : "")));
      }
    }
    return new MainDevice(
        kind, rating, interrupting, TerminalBinder.bind(main.terminals(), scope), traits, Origin.of(main.span()));
  }

  private void finish(Draft draft, List<String> path) {
    if (done.containsKey(draft.name())) {
      return;
    }
    PanelSupply supply = supply(draft, path);
    SupplySystem system = UNSTATED;
    List<Leg> legs = system.legs();
    if (supply instanceof PanelSupply.FromService from) {
      system = services.get(from.service()).system();
      legs = system.legs();
    } else if (supply instanceof PanelSupply.FromBreaker from) {
      Panel above = done.get(from.breaker().panel());
      legs = legsOf(above, from.breaker());
      system = above.system().on(legs);
    } else if (services.size() == 1) {
      system = services.values().iterator().next().system();
      legs = system.legs();
    }
    done.put(draft.name(), panel(draft, new Fed(supply, system, legs)));
  }

  private static List<Leg> legsOf(Panel above, BreakerId id) {
    List<Leg> legs = above.breakers().stream()
        .filter(b -> b.id().equals(id))
        .flatMap(b -> b.poles().stream())
        .flatMap(p -> p.leg().stream())
        .distinct()
        .sorted()
        .toList();
    return legs.isEmpty() ? above.legs() : legs;
  }

  /** What feeds a panel: the slot line that names it, or the service it is from. */
  private PanelSupply supply(Draft draft, List<String> path) {
    List<Way> feeders = waysTo.getOrDefault(draft.name(), List.of());
    Optional<Tree.Feed> stated = draft.tree().feed();
    if (feeders.size() > 1) {
      scope.report(
          Finding.error(Mistake.PANEL_FED_TWICE, "panel '" + draft.name() + "' is fed by two breakers")
              .at(feeders.get(1).tree().slots().span(), "the second")
              .with(feeders.get(0).tree().slots().span(), "the first")
              .fix("take its name out of one of the two lines"));
    }
    if (feeders.isEmpty()) {
      return fromStated(draft, stated);
    }
    BreakerId id = feeders.get(0).id();
    stated.ifPresent(feed -> agree(feed, id, draft));
    if (cut.contains(draft.name())) {
      scope.report(
          Finding.error(Mistake.FEEDERS_IN_A_ROW, "more than " + FeederRows.MOST + " panels feed one another in a row")
              .at(feeders.get(0).tree().slots().span(), "feeds '" + draft.name() + "', where the row was cut")
              .fix("feed it from a panel nearer to the service"));
      return new PanelSupply.Unknown();
    }
    if (id.panel().equals(draft.name()) || path.contains(id.panel())) {
      List<String> circle = new ArrayList<>(path.subList(Math.max(0, path.indexOf(id.panel())), path.size()));
      circle.add(draft.name());
      if (circle.indexOf(id.panel()) < 0) {
        circle.add(0, id.panel());
      }
      scope.report(
          Finding
              .error(Mistake.FEEDER_CIRCLE,
                  "panels feed each other in a loop: " + String.join(" feeds ", circle) + " feeds " + circle.get(0))
              .at(feeders.get(0).tree().slots().span(), "feeds '" + draft.name() + "'")
              .with(draft.tree().name().span(), "which feeds it in turn")
              .fix("feed one of them from a service or from another panel"));
      return new PanelSupply.Unknown();
    }
    List<String> longer = new ArrayList<>(path);
    longer.add(draft.name());
    finish(drafts.get(id.panel()), longer);
    return new PanelSupply.FromBreaker(id);
  }

  private PanelSupply fromStated(Draft draft, Optional<Tree.Feed> stated) {
    if (stated.isEmpty()) {
      if (services.isEmpty() && drafts.size() == 1) {
        scope.assume("panel " + draft.name() + " is on a 120/240 V supply");
      } else if (!scope.mayStandInDamage(draft.name())) {
        scope.report(
            Finding.error("panel-unfed", "nothing feeds panel '" + draft.name() + "'")
                .at(draft.tree().name().span(), "no slot line names it, and it is from no service")
                .fix(services.isEmpty() ? Fix.of("add a service") : fedBy(draft.tree())));
      }
      return new PanelSupply.Unknown();
    }
    Tree.Word from = stated.get().from();
    if (services.containsKey(from.text())) {
      return new PanelSupply.FromService(from.text());
    }
    if (drafts.containsKey(from.text())) {
      if (!scope.mayStandInDamage(draft.name())) {
        scope.report(
            Finding.error("panel-unfed", "no breaker of panel '" + from + "' feeds panel '" + draft.name() + "'")
                .at(stated.get().span(), "no slot line there names '" + draft.name() + "'")
                .fix("name " + draft.name() + " on the slot line that feeds it"));
      }
      return new PanelSupply.Unknown();
    }
    if (!scope.mayStandInDamage(from.text())) {
      Finding.Builder finding = Finding.error(Mistake.NAME_UNKNOWN, "no service or panel is called '" + from + "'")
          .at(from.span(), "a service or a panel is expected here");
      scope.near(from.text(), from.span(), feeds, draft.name()).forEach(n -> finding.fix(Fix.safe("write " + n, from.span(), n)));
      scope.report(finding);
    }
    return new PanelSupply.Unknown();
  }

  private Fix fedBy(Tree.Panel panel) {
    String from = "from " + services.keySet().iterator().next();
    return Fix.offered("write " + from + " after its name",
        panel.label().map(Tree.Text::span).orElse(panel.name().span()).after(), " " + from);
  }

  private void agree(Tree.Feed feed, BreakerId id, Draft draft) {
    boolean panelAgrees = feed.from().text().equals(id.panel());
    boolean slotAgrees = feed.slots().isEmpty()
        || id.slots().stream().anyMatch(s -> s.number() == feed.slots().get().numbers().get(0).number());
    if (!panelAgrees || !slotAgrees) {
      String right = id.panel() + "/" + id.slots().get(0);
      scope.report(
          Finding
              .error("feed-disagrees",
                  "panel '" + draft.name() + "' is stated to be from " + feed.span().text().replaceFirst("^from\\s+", ""))
              .at(feed.span(), "but " + id + " names it")
              .fix(Fix.offered("write from " + right, feed.span(), "from " + right)));
    }
  }

  /** From where a panel is fed, and with what. */
  private record Fed(PanelSupply supply, SupplySystem system, List<Leg> legs) {
    boolean feeds(Panel panel) {
      return supply.equals(panel.supply()) && system.equals(panel.system()) && legs.equals(panel.legs());
    }
  }

  /** A panel as finished the last time where it is written, fed and placed as it was. */
  record Finished(Draft draft, Panel panel) {}

  private Panel panel(Draft draft, Fed fed) {
    Optional<String> room = draft.room().flatMap(this::roomOf);
    return memory.panels
        .of(
            draft.tree(), scope,
            known -> Optional.of(known).filter(k -> k.draft == draft && fed.feeds(k.panel) && room.equals(k.panel.room())),
            () -> new Finished(draft, finished(draft, fed, room))).panel;
  }

  private Panel finished(Draft draft, Fed fed, Optional<String> room) {
    Tree.Panel tree = draft.tree();
    List<Leg> legs = fed.legs;
    List<Breaker> breakers = draft.ways().stream().map(w -> breaker(w, draft, legs)).toList();
    draft.main()
        .filter(m -> m.kind() == MainDevice.Kind.TRANSFER && breakers.stream().noneMatch(b -> b.backFed() || b.interlocked()))
        .ifPresent(m -> reportTransfer(m, draft));
    Optional<Stretch> feeder = tree.feederWiring()
        .flatMap(wirings::bind)
        // A spare hot in a cable is lawful where a panel takes one leg.
        .filter(wiring -> ServiceBinder.fits(wiring, Math.max(2, legs.size()), "the feeder of panel '" + draft.name() + "'", scope))
        .map(
            wiring -> new Stretch(
                tree.feederLength().flatMap(l -> ServiceBinder.lengthOf(l, scope, "the length of a feeder")),
                wiring,
                surroundings.bind(tree.surroundings(), Surroundings.UNSTATED),
                wiring.origin()));
    return new Panel(
        draft.name(), Scope.label(tree.label()), fed.supply, fed.system, legs, feeder, draft.bus(), draft.slots(),
        draft.order(), draft.bonded(), draft.main(), breakers, tree.kind().flatMap(k -> scope.word(Words.PANEL_USES, k)), draft.facts(),
        draft.flags(),
        room, draft.terminals(), ElectrodeBinder.bind(draft.earths(), Scope.status(tree.status()), wirings, scope),
        Scope.status(tree.status()), new Origin(tree.name().span(), tree.span()));
  }

  private void reportTransfer(MainDevice main, Draft draft) {
    scope.report(
        Finding.error(Mistake.TRANSFER_WITHOUT_SOURCE, "the transfer switch of panel '" + draft.name() + "' has no second source")
            .at(main.origin().name(), "no breaker of this panel is back-fed")
            .because("A transfer switch connects a bus to its supply or to a source of its own; here there is only the supply.")
            .fix("write back-fed interlocked on the slot line of the generator")
            .fix(asSwitch(main.origin().whole())));
  }

  private static Fix asSwitch(Span main) {
    String order = "write main switch where there is no other source";
    int at = main.text().indexOf("transfer");
    return at < 0
        ? Fix.of(order)
        : Fix.offered(order, main.source().span(main.start() + at, main.start() + at + "transfer".length()), "switch");
  }

  private Breaker breaker(Way way, Draft draft, List<Leg> legs) {
    List<Pole> poles = new ArrayList<>();
    for (int i = 0; i < way.id().slots().size(); i++) {
      Slot slot = way.id().slots().get(i);
      poles.add(new Pole(slot, i < way.legs().size() ? statedLeg(way.legs().get(i), legs) : legOf(slot, draft, legs)));
    }
    Status status = Scope.status(way.tree().status(), Scope.status(draft.tree().status()));
    return new Breaker(
        way.id(), way.device(), poles, way.handle(), way.rating(), way.interrupting(), way.protections(), trip(way), base(way),
        TerminalBinder.bind(way.tree().terminals(), scope), way.residual(), target(way),
        Scope.label(way.tree().label()), way.traits().contains("pinned"), !way.legs().isEmpty(),
        way.traits().contains("back-fed"), way.traits().contains("interlocked"), way.traits().contains("switched-neutral"),
        status, new Origin(way.tree().slots().span(), way.tree().span()));
  }

  private static Optional<Breaker.Base> base(Way way) {
    return Arrays.stream(Breaker.Base.values()).filter(b -> way.traits().contains(b.word())).findFirst();
  }

  private static Optional<Breaker.Trip> trip(Way way) {
    return Arrays.stream(Breaker.Trip.values()).filter(t -> way.traits().contains(t.word())).findFirst();
  }

  private Optional<Leg> legOf(Slot slot, Draft draft, List<Leg> legs) {
    int count = draft.slots().orElse(Panel.MOST_SLOTS);
    return slot.number() < 1 || slot.number() > count
        ? Optional.empty()
        : Optional.of(draft.order().legOf(slot.number(), count, legs));
  }

  private Optional<Leg> statedLeg(Tree.Word word, List<Leg> legs) {
    for (Leg leg : legs) {
      if (leg.name().equals(word.text())) {
        return Optional.of(leg);
      }
    }
    scope.report(
        Finding.error(Mistake.LEG_UNKNOWN, "this panel has no leg '" + word + "'")
            .at(word.span(), String.join(", ", legs.stream().map(Leg::name).toList()) + " can be written here"));
    return Optional.empty();
  }

  private Breaker.Target target(Way way) {
    if (way.target().isPresent()) {
      String name = way.target().get().text();
      if (panelNames.contains(name)) {
        return cut.contains(name) ? new Breaker.Target.Later() : new Breaker.Target.ToPanel(name);
      }
      return branchNames.contains(name) ? new Breaker.Target.ToBranch(name) : new Breaker.Target.Unknown(name);
    }
    return way.traits().contains("later") ? new Breaker.Target.Later() : new Breaker.Target.Spare();
  }
}
