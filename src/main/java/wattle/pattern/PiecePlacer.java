package wattle.pattern;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** The pieces that all statements share, as they are in one placement. */
final class PiecePlacer {
  private final Frame frame;

  PiecePlacer(Frame frame) {
    this.frame = frame;
  }

  static <T> List<T> each(List<T> list, Function<T, T> place) {
    return list.isEmpty() ? list : list.stream().map(place).toList();
  }

  // ---- Expressions

  /** A constant expression says the same in every placement and stays the object it is. */
  Tree.Expression expression(Tree.Expression expression) {
    if (expression instanceof Tree.Figure || expression instanceof Tree.FeetInches || expression instanceof Tree.Given) {
      return expression;
    }
    if (expression instanceof Tree.Reference reference) {
      return reference(reference);
    }
    if (expression instanceof Tree.Negation negation) {
      Tree.Expression operand = expression(negation.operand());
      return operand == negation.operand() ? negation : new Tree.Negation(operand, frame.span(negation.span()));
    }
    if (expression instanceof Tree.Binary binary) {
      Tree.Expression left = expression(binary.left());
      Tree.Expression right = expression(binary.right());
      return left == binary.left() && right == binary.right()
          ? binary
          : new Tree.Binary(binary.operator(), left, right, frame.span(binary.span()));
    }
    throw new AssertionError(expression);
  }

  private Tree.Expression reference(Tree.Reference reference) {
    Optional<Argument> argument = reference.path().words().size() > 1 ? Optional.empty() : frame.argument(reference.path().text());
    if (argument.isEmpty()) {
      Tree.Path path = frame.reference(reference.path());
      return frame.isPlan() ? reference : new Tree.Reference(path, path.span());
    }
    if (argument.get().figure().isEmpty()) {
      String given = argument.get().cable().isPresent() ? "a cable" : "a text";
      frame.ledger().report(
          Finding.error("argument-kind", "'" + reference.path().text() + "' needs a figure, and " + given + " is given")
              .at(argument.get().span(), "a figure with its unit is expected here")
              .with(frame.span(reference.span()), "used as a figure here"));
    }
    return new Tree.Given(argument.get().figure(), frame.span(reference.span()));
  }

  List<Tree.Expression> expressions(List<Tree.Expression> list) {
    return each(list, this::expression);
  }

  Optional<Tree.Expression> expression(Optional<Tree.Expression> expression) {
    return expression.map(this::expression);
  }

  Tree.Fact fact(Tree.Fact fact) {
    return new Tree.Fact(
        frame.plain(fact.name()), fact.denied(), expression(fact.amount()), fact.text().map(frame::text), frame.span(fact.span()));
  }

  Optional<Tree.Terminals> terminals(Optional<Tree.Terminals> terminals) {
    return terminals.map(t -> new Tree.Terminals(expression(t.temperature()), frame.plain(t.metals()), frame.span(t.span())));
  }

  Optional<Tree.Text> text(Optional<Tree.Text> text) {
    return text.map(frame::text);
  }

  Optional<Tree.Status> status(Optional<Tree.Status> status) {
    return status.map(s -> new Tree.Status(frame.plain(s.word())));
  }

  // ---- Wires

  Optional<Tree.Wiring> wiring(Optional<Tree.Wiring> wiring) {
    return wiring.map(this::wiring);
  }

  Tree.Wiring wiring(Tree.Wiring wiring) {
    if (wiring instanceof Tree.CableWiring cable) {
      return cable(cable);
    }
    if (wiring instanceof Tree.NamedWiring named) {
      return named(named);
    }
    if (wiring instanceof Tree.ParallelWiring parallel) {
      return new Tree.ParallelWiring(
          parallel.sets(), wiring(parallel.each()), frame.span(parallel.number()), frame.span(parallel.span()));
    }
    if (wiring instanceof Tree.RacewayWiring raceway) {
      return new Tree.RacewayWiring(
          race(raceway.race()), each(raceway.conductors(), this::conductor), frame.span(raceway.span()));
    }
    throw new AssertionError(wiring);
  }

  Tree.CableWiring cable(Tree.CableWiring cable) {
    return new Tree.CableWiring(
        each(cable.sizes(), this::size), frame.plain(cable.metal()), frame.plain(cable.type()), cable.withoutGround(),
        frame.span(cable.span()));
  }

  /** The cable that is given; a name for which none is given stays, and says whether that was told. */
  private Tree.Wiring named(Tree.NamedWiring named) {
    String name = named.name().text();
    Optional<Argument> argument = frame.argument(name);
    if (argument.isPresent() && argument.get().cable().isPresent()) {
      return argument.get().cable().get();
    }
    Span span = frame.span(named.span());
    List<String> near = argument.isPresent() ? List.of() : NearNames.of(name, frame.parameters());
    argument.ifPresent(given -> frame.ledger().report(
        Finding.error("argument-kind", "'" + name + "' needs a cable, and '" + given.shown() + "' is none")
            .at(given.span(), "a cable such as by 14/2 NM-B is expected here")
            .with(span, "used as a cable here")
            .fix("give a cable with its size and type, as in by 14/2 NM-B")));
    if (!near.isEmpty()) {
      Finding.Builder unknown = Finding.error(Mistake.NAME_UNKNOWN, "nothing is given for '" + name + "'").at(span,
          "a parameter of the pattern or a cable such as 14/2 NM-B is expected here");
      near.forEach(n -> unknown.fix(Fix.safe("write " + n, span, n)));
      frame.ledger().report(unknown);
    }
    return new Tree.NamedWiring(frame.plain(named.name()), argument.isPresent() || !near.isEmpty(), span);
  }

  Tree.RaceSize race(Tree.RaceSize race) {
    return new Tree.RaceSize(race.size(), frame.plain(race.unit()), frame.plain(race.kind()), frame.span(race.span()));
  }

  private Tree.CableSize size(Tree.CableSize size) {
    return new Tree.CableSize(size.figures(), frame.plain(size.unit()), frame.span(size.span()));
  }

  private Tree.Conductor conductor(Tree.Conductor conductor) {
    return new Tree.Conductor(
        conductor.count(), size(conductor.size()), frame.plain(conductor.metal()), frame.plain(conductor.insulation()),
        frame.plain(conductor.role()), frame.span(conductor.span()));
  }

  List<Tree.Surroundings> surroundings(List<Tree.Surroundings> list) {
    return each(list, this::surroundings);
  }

  private Tree.Surroundings surroundings(Tree.Surroundings written) {
    if (written instanceof Tree.InPlace in) {
      return new Tree.InPlace(frame.plain(in.place()), expression(in.temperature()), frame.span(in.span()));
    }
    if (written instanceof Tree.Bundled bundled) {
      return new Tree.Bundled(expression(bundled.count()), frame.span(bundled.span()));
    }
    if (written instanceof Tree.Through through) {
      return new Tree.Through(each(through.raceways(), frame::reference), frame.span(through.span()));
    }
    if (written instanceof Tree.Buried buried) {
      return new Tree.Buried(expression(buried.depth()), frame.span(buried.span()));
    }
    if (written instanceof Tree.Supported supported) {
      return new Tree.Supported(expression(supported.apart()), frame.span(supported.span()));
    }
    if (written instanceof Tree.Held held) {
      return new Tree.Held(expression(held.fromBox()), frame.span(held.span()));
    }
    if (written instanceof Tree.FromEdge edge) {
      return new Tree.FromEdge(expression(edge.distance()), frame.span(edge.span()));
    }
    if (written instanceof Tree.NailPlated plated) {
      return new Tree.NailPlated(frame.span(plated.span()));
    }
    throw new AssertionError(written);
  }

  // ---- Slots

  /** The slots with those that are worked out as numbers; absent where one comes to no slot, which is told. */
  Optional<Tree.SlotSpan> slots(Tree.SlotSpan slots) {
    List<Tree.SlotNumber> numbers = slots.numbers().stream().flatMap(n -> slot(n).stream()).toList();
    return numbers.size() < slots.numbers().size()
        ? Optional.empty()
        : Optional.of(new Tree.SlotSpan(numbers, frame.span(slots.span())));
  }

  private Optional<Tree.SlotNumber> slot(Tree.SlotNumber slot) {
    if (slot.computed().isEmpty()) {
      return Optional.of(new Tree.SlotNumber(slot.number(), slot.half(), slot.computed(), frame.span(slot.span())));
    }
    Tree.Expression computed = expression(slot.computed().get());
    Optional<Quantity> value = frame.ledger().evaluator().valueOf(computed);
    if (value.isEmpty()) {
      return Optional.empty();
    }
    double number = value.get().si();
    if (!value.get().dimension().equals(Dimension.NONE) || number != Math.rint(number) || number < 1 || number > 999_999) {
      frame.ledger().report(
          Finding.error("count-out-of-range", "a slot cannot be " + value.get())
              .at(frame.span(slot.span()), "a whole number of 1 or more is expected here"));
      return Optional.empty();
    }
    return Optional.of(
        new Tree.SlotNumber((int) number, slot.half(), Optional.of(computed), frame.span(slot.span())));
  }

  Optional<Tree.Subject> subject(Optional<Tree.Subject> subject) {
    return subject.map(
        s -> new Tree.Subject(frame.reference(s.path()), s.slots().flatMap(this::slots), frame.span(s.span())));
  }
}
