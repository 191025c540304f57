package wattle.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleParser.*;

/** Reads services and panels. */
final class SupplyReader {
  private final Pieces pieces;

  SupplyReader(Pieces pieces) {
    this.pieces = pieces;
  }

  Optional<Tree.Item> service(ServiceContext context) {
    Optional<Tree.Word> name = pieces.word(context.word());
    if (name.isEmpty()) {
      return Optional.empty();
    }
    Optional<Tree.Voltages> voltages = Optional.empty();
    List<Tree.Expression> amounts = new ArrayList<>();
    Optional<Tree.Word> threePhase = Optional.empty();
    Optional<Tree.Status> status = Optional.empty();
    for (ServiceItemContext item : context.serviceItem()) {
      if (item.voltages() != null) {
        voltages = voltages(item.voltages());
      } else if (item.amount() != null) {
        pieces.amount(item.amount()).ifPresent(amounts::add);
      } else if (item.status() != null) {
        status = pieces.status(item.status());
      } else if (item.exception == null) {
        threePhase = Optional.of(pieces.word(item.getStart()));
      }
    }
    List<Tree.SourceLine> sources = new ArrayList<>();
    List<Tree.ServiceRun> runs = new ArrayList<>();
    List<Tree.Earth> earths = new ArrayList<>();
    List<Tree.Fact> facts = new ArrayList<>();
    for (ServiceStatementContext statement : context.serviceStatement()) {
      if (statement instanceof SourceContext c) {
        source(c).ifPresent(sources::add);
      } else if (statement instanceof ServiceRunContext c) {
        run(c).ifPresent(runs::add);
      } else if (statement instanceof EarthContext c) {
        earth(c.word(), c.earthItem(), pieces.span(c)).ifPresent(earths::add);
      } else if (statement instanceof ServiceFactContext c) {
        pieces.fact(c.fact()).ifPresent(facts::add);
      }
    }
    return Optional.of(
        new Tree.Service(
            name.get(), pieces.text(context.STRING()), voltages, amounts, threePhase, status, sources, runs, earths,
            facts, pieces.span(context)));
  }

  private Optional<Tree.Voltages> voltages(VoltagesContext context) {
    return context.NUMBER().size() < 2 || context.UNIT() == null
        ? Optional.empty()
        : Optional.of(
            new Tree.Voltages(
                Pieces.number(context.NUMBER(0)),
                Pieces.number(context.NUMBER(1)),
                pieces.word(context.UNIT().getSymbol()),
                pieces.span(context)));
  }

  private Optional<Tree.SourceLine> source(SourceContext context) {
    List<Tree.Expression> amounts = new ArrayList<>();
    Optional<Tree.Expression> ratio = Optional.empty();
    Optional<Tree.Text> label = Optional.empty();
    for (SourceItemContext item : context.sourceItem()) {
      if (item.STRING() != null) {
        label = pieces.text(item.STRING());
      } else if (Pieces.hasToken(item, "ratio")) {
        ratio = pieces.amount(item.amount());
      } else {
        pieces.amount(item.amount()).ifPresent(amounts::add);
      }
    }
    Optional<Tree.Expression> statedRatio = ratio;
    Optional<Tree.Text> statedLabel = label;
    return pieces
        .word(context.word())
        .map(kind -> new Tree.SourceLine(kind, amounts, statedRatio, statedLabel, pieces.span(context)));
  }

  private Optional<Tree.ServiceRun> run(ServiceRunContext context) {
    Optional<Tree.Expression> length = pieces.amount(context.amount());
    Optional<Tree.Wiring> wiring = pieces.wiring(context.wiring());
    return length.isPresent() && wiring.isPresent()
        ? Optional.of(
            new Tree.ServiceRun(
                length.get(), wiring.get(), pieces.surroundings(context.surroundings()), pieces.span(context)))
        : Optional.empty();
  }

  private Optional<Tree.Earth> earth(WordContext electrode, List<EarthItemContext> items, Span span) {
    Optional<Tree.Wiring> wiring = Optional.empty();
    Optional<Tree.Status> status = Optional.empty();
    List<Tree.Expression> amounts = new ArrayList<>();
    for (EarthItemContext item : items) {
      if (item.wiring() != null) {
        wiring = pieces.wiring(item.wiring());
      } else if (item.status() != null) {
        status = pieces.status(item.status());
      } else {
        pieces.amount(item.amount()).ifPresent(amounts::add);
      }
    }
    Optional<Tree.Wiring> by = wiring;
    Optional<Tree.Status> stated = status;
    return pieces.word(electrode).map(kind -> new Tree.Earth(kind, by, amounts, stated, span));
  }

  Optional<Tree.Item> panel(PanelContext context) {
    Optional<Tree.Word> name = pieces.word(context.word());
    if (name.isEmpty()) {
      return Optional.empty();
    }
    Optional<Tree.Feed> feed = Optional.empty();
    Optional<Tree.Expression> length = Optional.empty();
    Optional<Tree.Wiring> wiring = Optional.empty();
    List<SurroundingsContext> surroundings = new ArrayList<>();
    Optional<Tree.Word> kind = Optional.empty();
    Optional<Tree.Status> status = Optional.empty();
    for (PanelItemContext item : context.panelItem()) {
      if (item.wiring() != null) {
        length = pieces.amount(item.amount());
        wiring = pieces.wiring(item.wiring());
      } else if (item.surroundings() != null) {
        surroundings.add(item.surroundings());
      } else if (item.status() != null) {
        status = pieces.status(item.status());
      } else if (Pieces.hasToken(item, "from")) {
        feed = pieces.dotted(item.path()).map(w -> new Tree.Feed(w, pieces.slotSpan(item.slotSpan()), pieces.span(item)));
      } else if (Pieces.hasToken(item, "is")) {
        kind = pieces.word(item.word());
      }
    }
    return Optional.of(
        new Tree.Panel(
            name.get(), pieces.text(context.STRING()), feed, length, wiring, pieces.surroundings(surroundings), kind,
            status, statements(context.panelLine()), pieces.span(context)));
  }

  private List<Tree.PanelStatement> statements(List<PanelLineContext> lines) {
    List<Tree.PanelStatement> statements = new ArrayList<>();
    for (PanelLineContext line : lines) {
      statements.addAll(Pieces.each(line.panelSetting(), this::setting));
      if (line.slot() != null) {
        slot(line.slot()).ifPresent(statements::add);
      }
      if (line.main() != null) {
        main(line.main()).ifPresent(statements::add);
      }
    }
    return statements;
  }

  private Optional<Tree.PanelStatement> setting(PanelSettingContext context) {
    if (context instanceof BusContext c) {
      return pieces.amount(c.amount()).map(rating -> new Tree.Bus(rating, pieces.span(c)));
    }
    if (context instanceof SlotsContext c) {
      return pieces.amount(c.amount()).map(count -> new Tree.SlotCount(count, pieces.span(c)));
    }
    if (context instanceof BondedContext c) {
      return Optional.of(new Tree.Bonded(pieces.span(c)));
    }
    if (context instanceof OrderContext c) {
      return pieces.word(c.word()).map(order -> new Tree.Order(order, pieces.span(c)));
    }
    if (context instanceof PanelRoomContext c) {
      return pieces.dotted(c.path()).map(room -> new Tree.PanelRoom(room, pieces.span(c)));
    }
    if (context instanceof PanelEarthContext c) {
      return earth(c.word(), c.earthItem(), pieces.span(c)).map(Tree.PanelEarth::new);
    }
    if (context instanceof PanelTerminalsContext c) {
      return pieces.terminals(c.terminals()).map(t -> new Tree.PanelTerminals(t, pieces.span(c)));
    }
    if (context instanceof PanelFactContext c) {
      return pieces.fact(c.fact()).map(Tree.PanelFact::new);
    }
    return Optional.empty(); // nothing could be read; the parser has said so
  }

  private Optional<Tree.PanelStatement> slot(SlotContext context) {
    SlotItems items = items(context.slotItem());
    return pieces
        .slotSpan(context.slotSpan())
        .map(
            slots -> new Tree.Slot(
                slots, items.amounts, items.traits, items.legs, items.terminals, items.status, items.words, items.label,
                pieces.repetition(context.repetition()), pieces.span(context)));
  }

  private Optional<Tree.PanelStatement> main(MainContext context) {
    SlotItems items = items(context.slotItem());
    return pieces
        .word(context.mainKind())
        .map(kind -> new Tree.Main(kind, items.amounts, items.traits, items.terminals, items.words, pieces.span(context)));
  }

  private static final class SlotItems {
    final List<Tree.Expression> amounts = new ArrayList<>();
    final List<Tree.Word> traits = new ArrayList<>();
    final List<Tree.Word> legs = new ArrayList<>();
    final List<Tree.Word> words = new ArrayList<>();
    Optional<Tree.Terminals> terminals = Optional.empty();
    Optional<Tree.Status> status = Optional.empty();
    Optional<Tree.Text> label = Optional.empty();
  }

  private SlotItems items(List<SlotItemContext> contexts) {
    SlotItems made = new SlotItems();
    for (SlotItemContext item : contexts) {
      if (item.amount() != null) {
        pieces.amount(item.amount()).ifPresent(made.amounts::add);
      } else if (item.terminals() != null) {
        made.terminals = pieces.terminals(item.terminals());
      } else if (item.breakerTrait() != null) {
        pieces.word(item.breakerTrait()).ifPresent(made.traits::add);
      } else if (item.status() != null) {
        made.status = pieces.status(item.status());
      } else if (item.STRING() != null) {
        made.label = pieces.text(item.STRING());
      } else if (Pieces.hasToken(item, "leg")) {
        made.legs.addAll(Pieces.each(item.mark(), pieces::word));
      } else if (item.path() != null) {
        pieces.dotted(item.path()).ifPresent(made.words::add);
      } else if (item.exception == null) {
        made.traits.add(pieces.word(item.getStart())); // later, spare
      }
    }
    return made;
  }
}
