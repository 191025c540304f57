package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.model.Origin;
import wattle.model.Service;
import wattle.model.Source;
import wattle.model.Stretch;
import wattle.model.SupplySystem;
import wattle.model.Surroundings;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.model.Words;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** Services: the supply system from its voltages, the source behind it, the run to it, its electrodes. */
final class ServiceBinder {
  static final List<String> SOURCES = List.of("transformer", "available", "generator");

  /** What is taken where the plan does not say, or says what cannot be. */
  private static final SupplySystem USUAL = new SupplySystem(SupplySystem.Kind.SPLIT_PHASE, 120, 240);

  private static final Map<String, List<Dimension>> FIGURES_OF_SOURCES = Map.of(
      "transformer", List.of(Dimension.POWER, Dimension.NONE), "available", List.of(Dimension.CURRENT),
      "generator", List.of(Dimension.POWER, Dimension.NONE));

  private final Scope scope;
  private final WiringBinder wirings;
  private final SurroundingsBinder surroundings;

  ServiceBinder(Scope scope) {
    this.scope = scope;
    this.wirings = new WiringBinder(scope);
    this.surroundings = new SurroundingsBinder(scope);
  }

  List<Service> bind(List<Tree.Service> trees) {
    List<Service> services = new ArrayList<>();
    Map<String, Span> names = new HashMap<>();
    for (Tree.Service tree : trees) {
      if (scope.claim(names, tree.name().text(), tree.name().span(), "services")) {
        services.add(service(tree));
      }
    }
    return services;
  }

  private Service service(Tree.Service tree) {
    Optional<Quantity> rating = Optional.empty();
    Optional<Quantity> volts = Optional.empty();
    for (Tree.Expression amount : tree.amounts()) {
      Optional<Quantity> value = scope.evaluator().valueOf(amount);
      if (value.isEmpty()) {
        continue;
      }
      if (!scope.evaluator().isStatable(value.get(), amount, "a figure of a service")) {
        continue;
      }
      if (value.get().dimension().equals(Dimension.CURRENT) && rating.isEmpty()) {
        rating = value;
      } else if (value.get().dimension().equals(Dimension.VOLTAGE) && volts.isEmpty()) {
        volts = value;
      } else if (value.get().dimension().equals(Dimension.CURRENT)) {
        scope.reportSecond(amount, "the rating of service '" + tree.name() + "'", rating.get());
      } else if (value.get().dimension().equals(Dimension.VOLTAGE)) {
        scope.reportSecond(amount, "the voltage of service '" + tree.name() + "'", volts.get());
      } else {
        scope.evaluator().valueOf(amount, Dimension.CURRENT, "the rating of a service");
      }
    }
    Map<String, Boolean> flags = new HashMap<>();
    Map<String, Quantity> facts = Facts.OF_SERVICE.read(tree.facts(), scope, flags);
    SupplySystem system = system(tree, volts);
    return new Service(
        tree.name().text(),
        Scope.label(tree.label()),
        system,
        rating,
        source(tree),
        run(tree, system.legs().size()),
        ElectrodeBinder.bind(tree.earths(), Scope.status(tree.status()), wirings, scope),
        facts,
        flags,
        Scope.status(tree.status()),
        new Origin(tree.name().span(), tree.span()));
  }

  private SupplySystem system(Tree.Service tree, Optional<Quantity> volts) {
    if (tree.voltages().isPresent()) {
      volts.ifPresent(v -> scope.report(
          Finding.error("said-twice", "the voltage of service '" + tree.name() + "' is stated twice")
              .at(tree.voltages().get().span(), "and as " + v + " besides")
              .fix(Fix.takenOut("take out " + tree.voltages().get().span().text() + " or " + v, tree.voltages().get().span()))));
      Tree.Voltages pair = tree.voltages().get();
      String written = Quantity.plain(pair.low(), 6) + "/" + Quantity.plain(pair.high(), 6) + " " + pair.unit();
      if (!pair.unit().text().equals("V") || pair.low() <= 0 || pair.high() <= 0) {
        scope.report(
            Finding.error("voltage-unknown", "a service cannot be " + written)
                .at(pair.span(), "a pair such as 120/240 V is expected here"));
        return USUAL;
      }
      Optional<SupplySystem> found = system(pair.low(), pair.high(), tree.threePhase().isPresent());
      Optional<SupplySystem> reversed = found.isPresent() ? found : system(pair.high(), pair.low(), tree.threePhase().isPresent());
      if (found.isEmpty() && reversed.isPresent()) {
        String right = Quantity.plain(pair.high(), 6) + "/" + Quantity.plain(pair.low(), 6) + " V";
        // The mark of a wye, as in 208Y/120, has been told while the text was read.
        if (pair.span().text().chars().noneMatch(c -> c == 'Y' || c == 'y')) {
          scope.report(
              Finding.error("voltages-reversed", "'" + pair.span().text() + "' is written " + right + " here")
                  .at(pair.span(), "the voltage from a leg to the neutral comes first")
                  .fix(Fix.safe("write " + right, pair.span(), right)));
        }
      } else if (found.isEmpty()) {
        scope.report(
            Finding.error("voltage-unknown", "no supply gives " + written)
                .at(pair.span(), "the second figure is twice the first, or 1.73 times it for legs of a wye")
                .fix(Fix.offered("write 120/240 V", pair.span(), "120/240 V"))
                .fix(Fix.offered("write 120/208 V", pair.span(), "120/208 V")));
      }
      return reversed.orElse(USUAL);
    } else if (volts.isPresent()) {
      return new SupplySystem(SupplySystem.Kind.SINGLE_PHASE, volts.get().si(), volts.get().si());
    } else {
      scope.assume("service " + tree.name() + " is 120/240 V");
      scope.report(
          Finding.warning("service-voltage-unstated", "service '" + tree.name() + "' does not state its voltage")
              .at(tree.name().span(), "120/240 V is assumed for the checks")
              .fix(Fix.offered("write 120/240 V after its name", tree.name().span().after(), " 120/240 V")));
    }
    return USUAL;
  }

  /** The supply of two voltages; absent where none has them. */
  private static Optional<SupplySystem> system(double low, double high, boolean threePhase) {
    if (Math.abs(high / low - 2) < 0.02) {
      return Optional.of(new SupplySystem(SupplySystem.Kind.SPLIT_PHASE, low, high));
    }
    if (Math.abs(high / low - Math.sqrt(3)) < 0.02) {
      SupplySystem.Kind wye = threePhase ? SupplySystem.Kind.THREE_PHASE_WYE : SupplySystem.Kind.TWO_LEGS_OF_WYE;
      return Optional.of(new SupplySystem(wye, low, high));
    }
    return Optional.empty();
  }

  private Optional<Source> source(Tree.Service tree) {
    if (tree.sources().isEmpty()) {
      return Optional.empty();
    }
    if (tree.sources().size() > 1) {
      scope.report(
          Finding.error("source-twice", "service '" + tree.name() + "' has two sources")
              .at(tree.sources().get(1).span(), "the second")
              .with(tree.sources().get(0).span(), "the first"));
    }
    Tree.SourceLine line = tree.sources().get(0);
    List<Quantity> values = new ArrayList<>();
    line.amounts().forEach(a -> scope.evaluator().valueOf(a).ifPresent(values::add));
    Optional<Quantity> ratio = line.ratio()
        .flatMap(r -> scope.evaluator().valueOf(r, Dimension.NONE, "the ratio of reactance to resistance"));
    if (ratio.filter(r -> r.si() < 0).isPresent()) {
      scope.report(
          Finding.error("source-incomplete", "the source of '" + tree.name() + "' has a ratio of reactance to resistance below 0")
              .at(line.span(), "a ratio such as 1.5 is expected here")
              .because("A winding and the lines before it are inductive; a ratio of 0 is a pure resistance."));
      return Optional.empty();
    }
    Tree.SourceLine said = line;
    for (int i = 0; i < said.amounts().size(); i++) {
      checkSourceFigure(said, i);
    }
    Optional<Quantity> power = first(values, Dimension.POWER);
    Optional<Quantity> current = first(values, Dimension.CURRENT);
    Optional<Quantity> percent = first(values, Dimension.NONE);
    String kind = line.kind().text();
    if (!SOURCES.contains(kind)) {
      Finding.Builder finding = Finding.error("source-unknown", "no source is called '" + kind + "'")
          .at(line.kind().span(), "transformer, available or generator is expected here");
      NearNames.of(kind, SOURCES).forEach(n -> finding.fix(Fix.safe("write " + n, line.kind().span(), n)));
      scope.report(finding);
      return Optional.empty();
    }
    if (kind.equals("available") && current.isPresent() && current.get().si() > 0) {
      return Optional.of(new Source.Available(current.get(), ratio, line.span()));
    }
    boolean impedance = percent.isPresent() && percent.get().si() > 0 && percent.get().si() < 1;
    if (kind.equals("transformer") && power.isPresent() && power.get().si() > 0 && impedance) {
      return Optional.of(new Source.Transformer(power.get(), percent.get(), ratio, line.span()));
    }
    if (kind.equals("generator") && power.isPresent() && power.get().si() > 0 && (percent.isEmpty() || impedance)) {
      return Optional.of(new Source.Generator(power.get(), impedance ? percent : Optional.empty(), line.span()));
    }
    scope.report(
        Finding.error("source-incomplete", "the source of '" + tree.name() + "' lacks a figure")
            .at(line.span(), expected(kind))
            .because("Without it, voltage and fault current cannot be calculated."));
    return Optional.empty();
  }

  /** A figure that a source of this kind does not have, or has already. */
  private void checkSourceFigure(Tree.SourceLine line, int index) {
    Tree.Expression amount = line.amounts().get(index);
    Optional<Quantity> value = scope.quietly(amount);
    List<Dimension> wanted = FIGURES_OF_SOURCES.get(line.kind().text());
    if (value.isEmpty() || wanted == null) {
      return;
    }
    Dimension dimension = value.get().dimension();
    if (!wanted.contains(dimension)) {
      scope.report(
          Finding.error("figure-unused", "a " + line.kind() + " as a source has no figure such as " + value.get())
              .at(amount.span(), expected(line.kind().text()))
              .fix(Fix.takenOut("take it out", amount.span())));
      return;
    }
    line.amounts().stream().limit(index).flatMap(a -> scope.quietly(a).stream()).filter(q -> q.dimension().equals(dimension)).findFirst()
        .ifPresent(first -> scope.reportSecond(amount, "a figure of the source", first));
  }

  private static String expected(String kind) {
    return switch (kind) {
      case "available" -> "a fault current such as 10 kA is expected here";
      case "transformer" -> "a rating and an impedance above 0 such as 50 kVA 1.8 % are expected here";
      default -> "a rating such as 12 kVA, and an impedance above 0 where one is written, are expected here";
    };
  }

  private static Optional<Quantity> first(List<Quantity> values, Dimension dimension) {
    return values.stream().filter(v -> v.dimension().equals(dimension)).findFirst();
  }

  private Optional<Stretch> run(Tree.Service tree, int legs) {
    if (tree.runs().isEmpty()) {
      return Optional.empty();
    }
    Tree.ServiceRun run = tree.runs().get(0);
    return wirings
        .bind(run.wiring())
        .filter(wiring -> fits(wiring, legs, "the service '" + tree.name() + "'", scope))
        .map(
            wiring -> new Stretch(
                lengthOf(run.length(), scope, "the length of a service run"),
                wiring,
                surroundings.bind(run.surroundings(), Surroundings.UNSTATED),
                Origin.of(run.span())));
  }

  /** Whether no more hots are run than there are legs: what is left over would be joined to nothing, and no rule would see it. */
  static boolean fits(Wiring wiring, int legs, String what, Scope scope) {
    long hots = wiring.wires().stream().filter(w -> w.purpose() == Wire.Purpose.HOT).count();
    if (hots <= legs) {
      return true;
    }
    scope.report(
        Finding.error("conductors-unused", what + " is run with " + hots + " hots and has " + legs + (legs == 1 ? " leg" : " legs"))
            .at(wiring.origin().whole(), "hots, then the neutral; a ground is named as one")
            .because("Of several identical conductors, the last is the neutral and the others are hots.")
            .fix("run a hot for each leg and a neutral, as in " + (legs + 1) + " x, then the ground"));
    return false;
  }

  /** A length that is not negative. */
  static Optional<Quantity> lengthOf(Tree.Expression expression, Scope scope, String what) {
    Optional<Quantity> length = scope.evaluator().valueOf(expression, Dimension.LENGTH, what);
    if (length.isPresent() && length.get().si() < 0) {
      scope.report(
          Finding.error(Mistake.LENGTH_NEGATIVE, what + " cannot be " + length.get())
              .at(expression.span(), "a length of 0 or more is expected here"));
      return Optional.empty();
    }
    return length;
  }
}
