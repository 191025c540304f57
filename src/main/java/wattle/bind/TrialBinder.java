package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.finding.Span;
import wattle.memo.Once;
import wattle.model.Branch;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.Event;
import wattle.model.Expectation;
import wattle.model.Load;
import wattle.model.Origin;
import wattle.model.Panel;
import wattle.model.Silence;
import wattle.model.Slot;
import wattle.model.Trial;
import wattle.motors.LockedRotor;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.syntax.Tree;

/** Trials, expectations and silences: every name in them resolved to a thing of the house. */
final class TrialBinder {
  private static final Map<String, Event.Conductor> CONDUCTORS = Map.of("hot", Event.Conductor.HOT, "neutral", Event.Conductor.NEUTRAL,
      "ground", Event.Conductor.GROUND);

  private final Scope scope;
  private final Map<String, Device> devices;
  private final Set<String> boxes;
  private final Map<String, Branch> branches;
  private final Map<String, Panel> panels;
  private final KnownNames deviceNames;
  private final KnownNames branchNames;
  private final KnownNames panelNames;
  private final KnownNames serviceNames;
  private final Once<KnownNames> placeNames = new Once<>(this::places);

  TrialBinder(
      Scope scope, Map<String, Device> devices, Set<String> boxes, Map<String, Branch> branches, Map<String, Panel> panels,
      Set<String> services) {
    this.scope = scope;
    this.devices = devices;
    this.boxes = boxes;
    this.branches = branches;
    this.panels = panels;
    this.deviceNames = new KnownNames(devices.keySet());
    this.branchNames = new KnownNames(branches.keySet());
    this.panelNames = new KnownNames(panels.keySet());
    this.serviceNames = new KnownNames(services);
  }

  private KnownNames places() {
    Set<String> places = new HashSet<>(boxes);
    places.addAll(devices.keySet());
    return new KnownNames(places);
  }

  List<Trial> trials(List<Tree.Trial> trees) {
    List<Trial> trials = new ArrayList<>();
    Map<String, Span> names = new HashMap<>();
    for (Tree.Trial tree : trees) {
      if (scope.claim(names, tree.name().text(), tree.name().span(), "trials")) {
        List<Event> events = new ArrayList<>();
        tree.events().forEach(e -> event(e).ifPresent(events::add));
        trials.add(
            new Trial(
                tree.name().text(), Scope.label(tree.label()), events, new Origin(tree.name().span(), tree.span())));
      }
    }
    return trials;
  }

  private Optional<Event> event(Tree.Event event) {
    if (event instanceof Tree.Draw draw) {
      return drawing(draw);
    }
    if (event instanceof Tree.Turn turn) {
      return named(turn.path(), deviceNames, "device").map(d -> new Event.Turned(d, turn.on(), turn.span()));
    }
    if (event instanceof Tree.OpenBreaker open) {
      return breaker(open.panel(), open.slots()).map(b -> new Event.BreakerOpen(b, open.span()));
    }
    if (event instanceof Tree.OpenServiceNeutral open) {
      return Optional.of(new Event.ServiceNeutralOpen(open.span()));
    }
    if (event instanceof Tree.OpenMain open) {
      return named(open.panel(), panelNames, "panel").map(p -> new Event.MainOpen(p, open.span()));
    }
    if (event instanceof Tree.Lose lose) {
      return named(lose.service(), serviceNames, "service").map(s -> new Event.SupplyLost(s, lose.span()));
    }
    if (event instanceof Tree.Transfer transfer) {
      return transferred(transfer);
    }
    if (event instanceof Tree.Give give) {
      return giving(give);
    }
    if (event instanceof Tree.OpenConductor open) {
      return openConductor(open);
    }
    if (event instanceof Tree.Loosen loosen) {
      return loosen(loosen);
    }
    if (event instanceof Tree.Lift lift) {
      return place(lift.at())
          .map(
              at -> new Event.GroundLifted(
                  at,
                  lift.leakage().flatMap(l -> positive(l, "the resistance of a leakage")),
                  lift.span()));
    }
    if (event instanceof Tree.Fault fault) {
      return fault(fault);
    }
    if (event instanceof Tree.Move move) {
      List<Slot> slots = slots(move.slots());
      return named(move.branch(), branchNames, "branch").map(b -> new Event.Moved(b, slots, move.span()));
    }
    if (event instanceof Tree.Swap swap) {
      return place(swap.at()).map(at -> new Event.Reversed(at, swap.span()));
    }
    throw new AssertionError(event);
  }

  /** {@code utility} and {@code off} are positions of every transfer; a source may be called so and is then meant. */
  private Optional<Event> transferred(Tree.Transfer transfer) {
    Optional<String> panel = named(transfer.panel(), panelNames, "panel");
    String to = transfer.position().text();
    if (panel.isEmpty() || devices.containsKey(to)) {
      return panel.map(p -> new Event.Transferred(p, Optional.of(to), false, transfer.span()));
    }
    if (to.equals("utility") || to.equals("off")) {
      return panel.map(p -> new Event.Transferred(p, Optional.empty(), to.equals("off"), transfer.span()));
    }
    named(transfer.position(), deviceNames, "source");
    return Optional.empty();
  }

  private Optional<Event> giving(Tree.Give give) {
    Optional<String> device = named(give.path(), deviceNames, "device");
    Optional<Quantity> given = scope.evaluator().valueOf(give.amount(), Dimension.POWER, "what a source gives");
    if (given.isPresent() && given.get().si() < 0) {
      scope.report(
          Finding.error("draw-out-of-range", "'" + give.path().text() + "' cannot give " + given.get())
              .at(give.span(), "a power of 0 or more; storage that is charged draws"));
      return Optional.empty();
    }
    return device.isPresent() && given.isPresent()
        ? Optional.of(new Event.Giving(device.get(), given.get(), give.span()))
        : Optional.empty();
  }

  private Optional<Event> openConductor(Tree.OpenConductor open) {
    Optional<Event.Conductor> conductor = conductor(open.conductor());
    if (open.at().isEmpty() && !branches.containsKey(open.of().text()) && panels.containsKey(open.of().text())) {
      return conductor.map(c -> new Event.FeederOpen(c, open.of().text(), open.span()));
    }
    Optional<String> branch = named(open.of(), branchNames, "branch");
    if (conductor.isEmpty() || branch.isEmpty()) {
      return Optional.empty();
    }
    Optional<String> at = open.at().flatMap(this::place);
    return open.at().isPresent() && at.isEmpty()
        ? Optional.empty()
        : Optional.of(new Event.ConductorOpen(conductor.get(), branch.get(), at, open.span()));
  }

  private Optional<Event> loosen(Tree.Loosen loosen) {
    Optional<Event.Conductor> conductor = conductor(loosen.conductor());
    Optional<String> at = place(loosen.at());
    Optional<Quantity> added = positive(loosen.added(), "the added resistance of a joint");
    return conductor.isPresent() && at.isPresent() && added.isPresent()
        ? Optional.of(new Event.JointLoose(conductor.get(), at.get(), added.get(), loosen.span()))
        : Optional.empty();
  }

  private Optional<Event> fault(Tree.Fault fault) {
    Optional<Event.Conductor> from = conductor(fault.from());
    Optional<Event.Conductor> to = conductor(fault.to());
    Optional<String> at = place(fault.at());
    if (from.isEmpty() || to.isEmpty() || at.isEmpty()) {
      return Optional.empty();
    }
    if (from.equals(to)) {
      scope.report(
          Finding.error("fault-to-itself", "a fault needs two conductors")
              .at(fault.to().span(), "another conductor than " + fault.from() + " is expected here"));
      return Optional.empty();
    }
    return Optional.of(
        new Event.Faulted(
            from.get(), to.get(), at.get(),
            fault.through().flatMap(r -> positive(r, "the resistance of a fault")), fault.span()));
  }

  private Optional<Quantity> positive(Tree.Expression written, String what) {
    Optional<Quantity> value = scope.evaluator().valueOf(written, Dimension.RESISTANCE, what);
    if (value.isPresent() && value.get().si() < 0) {
      scope.report(
          Finding.error("resistance-negative", what + " cannot be " + value.get())
              .at(written.span(), "a resistance of 0 or more is expected here"));
      return Optional.empty();
    }
    return value;
  }

  private Optional<Event.Conductor> conductor(Tree.Word word) {
    Optional<Event.Conductor> found = Optional.ofNullable(CONDUCTORS.get(word.text()));
    if (word.text().equals("other-hot")) {
      return Optional.of(Event.Conductor.HOT_2);
    }
    if (found.isEmpty()) {
      scope.report(
          Finding.error("conductor-unknown", "no conductor is called '" + word + "'")
              .at(word.span(), "hot, other-hot, neutral or ground is expected here"));
    }
    return found;
  }

  private Optional<Event> drawing(Tree.Draw draw) {
    String path = draw.path().text();
    Optional<String> device = Optional.empty();
    boolean panel = !devices.containsKey(path) && panels.containsKey(path);
    String part = "";
    int dot = path.lastIndexOf('.');
    if (devices.containsKey(path)) {
      device = Optional.of(path);
    } else if (dot > 0 && devices.containsKey(path.substring(0, dot))
        && devices.get(path.substring(0, dot)).kind().halves().contains(path.substring(dot + 1))) {
      device = Optional.of(path.substring(0, dot));
      part = path.substring(dot + 1);
    } else if (!panel) {
      unknown(draw.path().span(), path, "device or panel", deviceNames);
    }
    Optional<Quantity> drawn = Optional.empty();
    double powerFactor = 1;
    boolean start = false;
    for (Tree.Expression amount : draw.amounts()) {
      if (isLockedRotor(amount) && !panel) {
        start = true;
        powerFactor = scope.library().limit("start-power-factor").map(l -> l.value().si()).orElse(1.0);
        drawn = device.flatMap(d -> lockedRotor(devices.get(d), draw.span()));
        continue;
      }
      Optional<Quantity> value = scope.evaluator().valueOf(amount);
      if (value.isPresent() && value.get().dimension().equals(Dimension.NONE) && drawn.isPresent()) {
        powerFactor = value.get().si();
      } else if (value.isPresent() && isDrawn(value.get().dimension())) {
        drawn = value;
      } else if (value.isPresent()) {
        scope.evaluator().valueOf(amount, Dimension.CURRENT, "what a device draws");
      }
    }
    if (drawn.isPresent() && (drawn.get().si() < 0 || powerFactor <= 0 || powerFactor > 1)) {
      scope.report(
          Finding
              .error("draw-out-of-range",
                  "'" + path + "' cannot draw " + drawn.get()
                      + (powerFactor == 1 ? "" : " at a power factor of " + Quantity.plain(powerFactor, 4)))
              .at(draw.span(), "a figure of 0 or more, at a power factor above 0 and at most 1"));
      return Optional.empty();
    }
    Load.Behavior behavior = draw.behavior().map(w -> Load.Behavior.valueOf(w.text().toUpperCase(java.util.Locale.ROOT)))
        .orElse(start ? Load.Behavior.IMPEDANCE : usual(drawn));
    if (panel) {
      double factor = powerFactor;
      return drawn.map(d -> new Event.PanelDrawing(path, d, factor, behavior, draw.span()));
    }
    return device.isPresent() && drawn.isPresent()
        ? Optional.of(new Event.Drawing(device.get(), part, drawn.get(), powerFactor, behavior, start, draw.span()))
        : Optional.empty();
  }

  private static boolean isLockedRotor(Tree.Expression amount) {
    return amount instanceof Tree.Reference name && name.path().text().equals(LockedRotor.FIGURE);
  }

  /** What a motor draws at nominal voltage that does not turn yet, by its nameplate. */
  private Optional<Quantity> lockedRotor(Device motor, Span span) {
    double nominal = nominalVolts(motor);
    Optional<Quantity> stated = LockedRotor.stated(scope.library(), motor, nominal)
        .map(s -> Quantity.of(s.amperes().si() * (nominal > 0 ? nominal / s.ratedVolts() : 1), Units.AMPERE));
    if (stated.isEmpty()) {
      scope.report(
          Finding.error("locked-rotor-unstated", "'" + motor.name() + "' states no locked-rotor current")
              .at(span, "what it draws at the start is not known")
              .because("A starting motor draws several times its rated current, as its nameplate shows.")
              .fix("write locked-rotor and the amperes of its nameplate (LRA) after it, such as locked-rotor 96 A, or its horsepower and"
                  + " code letter, such as 2 hp code-L"));
    }
    return stated;
  }

  /** Between the conductors that a device is connected to; 0 where no supply is known. */
  private double nominalVolts(Device device) {
    boolean across = device.loads().stream().anyMatch(l -> l.connection() instanceof Load.Connection.HotToHot);
    return branches.values().stream()
        .filter(b -> b.points().stream().anyMatch(p -> p.devices().contains(device.name())))
        .findFirst().flatMap(Branch::panel).map(panels::get).map(Panel::system)
        .map(s -> across ? s.legToLegVolts() : s.legToNeutralVolts()).orElse(0.0);
  }

  private static boolean isDrawn(Dimension dimension) {
    return dimension.equals(Dimension.CURRENT) || dimension.equals(Dimension.POWER) || dimension.equals(Dimension.RESISTANCE);
  }

  /** A stated current is held; a stated power or resistance is that of a heater at nominal voltage. */
  private static Load.Behavior usual(Optional<Quantity> drawn) {
    return drawn.isPresent() && drawn.get().dimension().equals(Dimension.CURRENT)
        ? Load.Behavior.CURRENT
        : Load.Behavior.IMPEDANCE;
  }

  private Optional<String> place(Tree.Path path) {
    if (devices.containsKey(path.text()) || boxes.contains(path.text()) || panels.containsKey(path.text())) {
      return Optional.of(path.text());
    }
    unknown(path.span(), path.text(), "box or device", placeNames.get());
    return Optional.empty();
  }

  private Optional<String> named(Tree.Path path, KnownNames known, String kind) {
    if (known.names().contains(path.text())) {
      return Optional.of(path.text());
    }
    unknown(path.span(), path.text(), kind, known);
    return Optional.empty();
  }

  private Optional<String> named(Tree.Word word, KnownNames known, String kind) {
    return named(new Tree.Path(List.of(word), word.span()), known, kind);
  }

  private void unknown(Span span, String name, String kind, KnownNames known) {
    if (scope.mayStandInDamage(name)) {
      return;
    }
    Finding.Builder finding = Finding.error(Mistake.NAME_UNKNOWN, "no " + kind + " is called '" + name + "'").at(span,
        "a " + kind + " of the plan is expected here");
    scope.near(name, span, known).forEach(n -> finding.fix(Fix.safe("write " + n, span, n)));
    scope.report(finding);
  }

  private Optional<BreakerId> breaker(Tree.Word panel, Tree.SlotSpan slots) {
    Panel found = panels.get(panel.text());
    if (found == null) {
      unknown(panel.span(), panel.text(), "panel", panelNames);
      return Optional.empty();
    }
    List<Slot> sought = slots(slots);
    Optional<BreakerId> id = found.breakers().stream()
        .map(b -> b.id())
        .filter(b -> b.slots().equals(sought) || sought.size() == 1 && b.slots().contains(sought.get(0)))
        .findFirst();
    if (id.isEmpty()) {
      scope.report(
          Finding.error(Mistake.NAME_UNKNOWN, "panel '" + panel + "' has no breaker in slot " + slots.text())
              .at(slots.span(), "a slot with a breaker is expected here"));
    }
    return id;
  }

  private static List<Slot> slots(Tree.SlotSpan span) {
    return span.numbers().stream().map(n -> new Slot(n.number(), n.half(), n.misfit())).toList();
  }

  List<Expectation> expectations(List<Tree.Expectation> trees, Set<String> trials) {
    KnownNames trialNames = new KnownNames(trials);
    List<Expectation> bound = new ArrayList<>();
    for (Tree.Expectation tree : trees) {
      Optional<Quantity> value = tree.value().flatMap(v -> scope.evaluator().valueOf(v));
      if (value.isEmpty() && tree.value().isPresent()) {
        continue;
      }
      Optional<Quantity> within = tree.within().flatMap(w -> scope.evaluator().valueOf(w, value.get().dimension(), "a tolerance"));
      if (tree.trial().isPresent() && !trials.contains(tree.trial().get().text())) {
        unknown(tree.trial().get().span(), tree.trial().get().text(), "trial", trialNames);
        continue;
      }
      bound.add(
          new Expectation(
              tree.value().isEmpty() ? "protection" : tree.measure().stream().map(Tree.Word::text).collect(Collectors.joining("-")),
              tree.subject().map(s -> s.path().text() + s.slots().map(n -> "/" + n.text()).orElse("")),
              Expectation.Bound.values()[tree.relation().ordinal()],
              value,
              within,
              tree.trial().map(Tree.Word::text),
              tree.measured(),
              Origin.of(tree.span())));
    }
    return bound;
  }

  static List<Silence> silences(List<Tree.Silence> trees) {
    return trees.stream()
        .map(
            s -> new Silence(
                s.rule().text(), s.at().map(a -> a.path().text() + a.slots().map(n -> "/" + n.text()).orElse("")), s.within(),
                s.reason().value(), new Origin(s.rule().span(), s.span())))
        .toList();
  }
}
