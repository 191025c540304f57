package wattle.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.TerminalNode;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleParser;
import wattle.syntax.grammar.WattleParser.*;

/**
 * Reads the pieces that all statements share. After a mistake the parser leaves contexts with children missing: each
 * method here takes such a null and answers with an empty value, so that the rest of the statement is kept.
 */
final class Pieces {
  private final Spans spans;
  private final WordPool words;

  Pieces(Spans spans) {
    this.spans = spans;
    this.words = new WordPool(spans.text());
  }

  Span span(ParserRuleContext context) {
    return spans.of(context);
  }

  Span span(Token token) {
    return spans.of(token);
  }

  /** Maps all contexts that give a value. */
  static <C, T> List<T> each(List<C> contexts, Function<C, Optional<T>> read) {
    if (contexts.isEmpty()) {
      return List.of();
    }
    List<T> made = new ArrayList<>(contexts.size());
    for (C context : contexts) {
      read.apply(context).ifPresent(made::add);
    }
    return made;
  }

  Optional<Tree.Word> word(ParserRuleContext context) {
    if (context == null || context.getStart() == null || context.exception != null) {
      return Optional.empty();
    }
    return Optional.of(word(context.getStart()));
  }

  Tree.Word word(Token token) {
    Span span = spans.of(token);
    return new Tree.Word(text(token, span), span);
  }

  /** Not by the token where that can be helped, which copies its text each time. */
  private String text(Token token, Span span) {
    int type = token.getType();
    String literal = Literals.of(type);
    if (!literal.isEmpty()) {
      return literal;
    }
    return type == WattleParser.WORD || type == WattleParser.UNIT ? words.of(span.start(), span.end()) : token.getText();
  }

  /** A name with dots as one word. */
  Optional<Tree.Word> dotted(PathContext context) {
    return path(context).map(p -> new Tree.Word(p.text(), p.span()));
  }

  Optional<Tree.Word> word(TerminalNode node) {
    return node == null ? Optional.empty() : Optional.of(word(node.getSymbol()));
  }

  Optional<Tree.Text> text(TerminalNode node) {
    return node == null ? Optional.empty() : Optional.of(new Tree.Text(unescape(node.getText()), spans.of(node.getSymbol())));
  }

  private static String unescape(String quoted) {
    String inner = quoted.substring(1, quoted.length() - 1);
    if (inner.indexOf('\\') < 0) {
      return inner;
    }
    StringBuilder plain = new StringBuilder(inner.length());
    for (int i = 0; i < inner.length(); i++) {
      char c = inner.charAt(i);
      if (c == '\\' && i + 1 < inner.length()) {
        char next = inner.charAt(++i);
        plain.append(next == 'n' ? '\n' : next == 't' ? '\t' : next);
      } else {
        plain.append(c);
      }
    }
    return plain.toString();
  }

  Optional<Tree.Status> status(List<StatusContext> contexts) {
    return contexts.isEmpty() ? Optional.empty() : word(contexts.get(0)).map(Tree.Status::new);
  }

  Optional<Tree.Status> status(StatusContext context) {
    return word(context).map(Tree.Status::new);
  }

  Optional<Tree.Path> path(PathContext context) {
    if (context == null) {
      return Optional.empty();
    }
    Optional<Tree.Word> first = word(context.word());
    if (first.isEmpty()) {
      return Optional.empty();
    }
    List<MarkContext> marks = context.mark();
    if (marks.isEmpty()) {
      return Optional.of(new Tree.Path(List.of(first.get()), spans.of(context)));
    }
    List<Tree.Word> steps = new ArrayList<>(List.of(first.get()));
    steps.addAll(each(marks, this::word));
    Span span = spans.of(context);
    int length = steps.size() - 1; // of the dots
    for (Tree.Word step : steps) {
      length += step.text().length();
    }
    boolean unbroken = length == span.end() - span.start();
    return Optional.of(unbroken ? new Tree.Path(words.of(span.start(), span.end()), steps, span) : new Tree.Path(steps, span));
  }

  // ---- Quantities and expressions

  Optional<Tree.Expression> amount(AmountContext context) {
    if (context == null) {
      return Optional.empty();
    }
    return context.quantity() != null ? quantity(context.quantity()) : expression(context.expression());
  }

  List<Tree.Expression> amounts(List<AmountContext> contexts) {
    return each(contexts, this::amount);
  }

  Optional<Tree.Expression> quantity(QuantityContext context) {
    List<TerminalNode> numbers = context == null ? List.of() : context.NUMBER();
    if (numbers.isEmpty()) {
      return Optional.empty();
    }
    double first = number(numbers.get(0));
    if (hasToken(context, "/")) {
      return fraction(context, numbers);
    }
    if (numbers.size() > 1) {
      return Optional.of(new Tree.FeetInches(first, number(numbers.get(1)), spans.of(context)));
    }
    Optional<Tree.Word> unit = Optional.ofNullable(context.unit()).map(this::spanned);
    return Optional.of(new Tree.Figure(first, unit, spans.of(context)));
  }

  /** A fraction, or a whole number and one: the parser may have read less of it than there should be. */
  private Optional<Tree.Expression> fraction(QuantityContext context, List<TerminalNode> numbers) {
    int last = numbers.size() - 1;
    if (last < 1 || context.unitName() == null) {
      return Optional.empty();
    }
    double part = number(numbers.get(last - 1)) / number(numbers.get(last));
    Optional<Tree.Word> unit = Optional.of(spanned(context.unitName()));
    if (last == 1) {
      return Optional.of(new Tree.Figure(part, unit, spans.of(context)));
    }
    double whole = number(numbers.get(0));
    if (context.getChild(1) instanceof TerminalNode sign && sign.getText().equals("-")
        && spans.of(numbers.get(0).getSymbol()).end() != spans.of(sign.getSymbol()).start()) {
      // Set apart it is a minus: 10 - 1/2 m takes a length from a number, which is told.
      Span first = spans.of(numbers.get(0).getSymbol());
      Tree.Figure second = new Tree.Figure(part, unit,
          new Span(first.source(), spans.of(numbers.get(1).getSymbol()).start(), spans.of(context).end()));
      return Optional.of(new Tree.Binary(Tree.Operator.MINUS, new Tree.Figure(whole, Optional.empty(), first), second, spans.of(context)));
    }
    return Optional.of(new Tree.Figure(whole + part, unit, spans.of(context)));
  }

  /** The whole text of a context as one word, such as the unit {@code VA/m2}. */
  Tree.Word spanned(ParserRuleContext context) {
    Span span = spans.of(context);
    return new Tree.Word(span.text(), span);
  }

  static double number(TerminalNode node) {
    return Double.parseDouble(node.getText());
  }

  Optional<Tree.Expression> expression(ExpressionContext context) {
    if (context instanceof FigureContext c) {
      return quantity(c.quantity());
    }
    if (context instanceof ReferenceContext c) {
      return path(c.path()).map(p -> new Tree.Reference(p, p.span()));
    }
    if (context instanceof GroupContext c) {
      return expression(c.expression());
    }
    if (context instanceof NegationContext c) {
      return expression(c.expression()).map(e -> new Tree.Negation(e, spans.of(c)));
    }
    if (context instanceof ProductContext c) {
      String sign = c.getChild(1).getText();
      Tree.Operator operator = sign.equals("*") || sign.equals("×") ? Tree.Operator.TIMES : Tree.Operator.DIVIDED_BY;
      return binary(operator, c.expression(), c);
    }
    if (context instanceof SumContext c) {
      return binary(
          c.getChild(1).getText().equals("+") ? Tree.Operator.PLUS : Tree.Operator.MINUS, c.expression(), c);
    }
    return Optional.empty(); // nothing could be read; the parser has said so
  }

  private Optional<Tree.Expression> binary(
      Tree.Operator operator, List<ExpressionContext> operands, ParserRuleContext whole) {
    if (operands.size() < 2) {
      return Optional.empty();
    }
    Optional<Tree.Expression> left = expression(operands.get(0));
    Optional<Tree.Expression> right = expression(operands.get(1));
    return left.isPresent() && right.isPresent()
        ? Optional.of(new Tree.Binary(operator, left.get(), right.get(), spans.of(whole)))
        : Optional.empty();
  }

  Optional<Tree.Fact> fact(FactContext context) {
    return word(context.WORD())
        .map(name -> new Tree.Fact(name, hasToken(context, "no"), amount(context.amount()), text(context.STRING()), spans.of(context)));
  }

  // ---- Wires

  Optional<Tree.Wiring> wiring(WiringContext context) {
    if (context == null) {
      return Optional.empty();
    }
    if (context.sets() != null && context.sets().NUMBER() != null) {
      Span number = spans.of(context.sets().NUMBER().getSymbol());
      return oneSet(context).map(
          each -> new Tree.ParallelWiring(number(context.sets().NUMBER()), each, number, spans.of(context)));
    }
    return oneSet(context);
  }

  private Optional<Tree.Wiring> oneSet(WiringContext context) {
    if (context.raceSize() != null) {
      List<Tree.Conductor> conductors = each(context.conductor(), this::conductor);
      return raceSize(context.raceSize()).map(race -> new Tree.RacewayWiring(race, conductors, spans.of(context)));
    }
    if (context.word() != null) {
      return word(context.word()).map(name -> new Tree.NamedWiring(name, false, name.span()));
    }
    return cable(context.cabling()).map(cable -> cable);
  }

  Optional<Tree.CableWiring> cable(CablingContext context) {
    if (context == null || context.cableSizes() == null) {
      return Optional.empty();
    }
    List<Tree.CableSize> sizes = each(context.cableSizes().cableSize(), this::cableSize);
    return sizes.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Tree.CableWiring(
                sizes, word(context.metal()), word(context.WORD()), hasToken(context, "without"), spans.of(context)));
  }

  Optional<Tree.RaceSize> raceSize(RaceSizeContext context) {
    if (context == null || context.WORD() == null || context.NUMBER().isEmpty() || context.getChildCount() < 3
        || hasToken(context, "-") && context.NUMBER().size() < 2) {
      return Optional.empty();
    }
    // 2 in, 3/4 in, 1-1/4 in
    boolean mixed = hasToken(context, "-");
    int first = mixed ? 1 : 0;
    double size = number(context.NUMBER(first));
    if (context.NUMBER().size() > first + 1) {
      size /= number(context.NUMBER(first + 1));
    }
    if (mixed) {
      size += number(context.NUMBER(0));
    }
    Token unit = ((TerminalNode) context.getChild(context.getChildCount() - 2)).getSymbol();
    return Optional.of(new Tree.RaceSize(size, word(unit), word(context.WORD().getSymbol()), spans.of(context)));
  }

  private Optional<Tree.CableSize> cableSize(CableSizeContext context) {
    if (context.NUMBER().isEmpty()) {
      return Optional.empty();
    }
    List<Double> figures = context.NUMBER().stream().map(Pieces::number).toList();
    return Optional.of(new Tree.CableSize(figures, word(context.UNIT()), spans.of(context)));
  }

  private Optional<Tree.Conductor> conductor(ConductorContext context) {
    WireSizeContext size = context.wireSize();
    if (size == null || size.NUMBER().isEmpty()) {
      return Optional.empty();
    }
    List<Double> figures = size.NUMBER().stream().map(Pieces::number).toList();
    int count = context.NUMBER() == null ? 1 : (int) number(context.NUMBER());
    return Optional.of(
        new Tree.Conductor(
            count,
            new Tree.CableSize(figures, word(size.UNIT()), spans.of(size)),
            word(context.metal()),
            word(context.WORD()),
            word(context.role()),
            spans.of(context)));
  }

  Optional<Tree.Terminals> terminals(TerminalsContext context) {
    return context == null || context.exception != null
        ? Optional.empty()
        : Optional.of(new Tree.Terminals(amount(context.amount()), each(context.terminalMetal(), this::word), spans.of(context)));
  }

  List<Tree.Surroundings> surroundings(List<SurroundingsContext> contexts) {
    return each(contexts, this::surroundings);
  }

  private Optional<Tree.Surroundings> surroundings(SurroundingsContext context) {
    Span span = spans.of(context);
    switch (context.getStart().getText()) {
      case "in" :
        return word(context.word()).map(place -> new Tree.InPlace(place, amount(context.amount()), span));
      case "bundled" :
        return amount(context.amount()).map(count -> new Tree.Bundled(count, span));
      case "through" :
        return Optional.of(new Tree.Through(each(context.path(), this::dotted), span));
      case "buried" :
        return Optional.of(new Tree.Buried(amount(context.amount()), span));
      case "supported" :
        return amount(context.amount()).map(apart -> new Tree.Supported(apart, span));
      case "held" :
        return amount(context.amount()).map(fromBox -> new Tree.Held(fromBox, span));
      case "from-edge" :
        return amount(context.amount()).map(fromEdge -> new Tree.FromEdge(fromEdge, span));
      case "nail-plated" :
        return Optional.of(new Tree.NailPlated(span));
      default :
        return Optional.empty(); // nothing could be read; the parser has said so
    }
  }

  Optional<Tree.SlotSpan> slotSpan(SlotSpanContext context) {
    if (context == null) {
      return Optional.empty();
    }
    List<Tree.SlotNumber> numbers = each(context.slotNumber(), this::slotNumber);
    return numbers.isEmpty() ? Optional.empty() : Optional.of(new Tree.SlotSpan(numbers, spans.of(context)));
  }

  private Optional<Tree.SlotNumber> slotNumber(SlotNumberContext context) {
    if (context.getStart() == null || context.exception != null) {
      return Optional.empty();
    }
    String text = context.getStart().getText();
    Span span = spans.of(context);
    if (context.expression() != null) {
      return expression(context.expression()).map(e -> new Tree.SlotNumber(-1, Optional.empty(), Optional.of(e), span));
    }
    if (context.getStart().getType() == WattleParser.HALF_SLOT) {
      String digits = text.substring(0, text.length() - 1);
      return Optional.of(new Tree.SlotNumber(slot(digits), Optional.of(text.charAt(text.length() - 1)), Optional.empty(), span));
    }
    return Optional.of(new Tree.SlotNumber(slot(text), Optional.empty(), Optional.empty(), span));
  }

  /** A figure that is no slot of any panel becomes -1, which binding reports as out of range. */
  private static int slot(String digits) {
    return digits.length() > 6 || digits.indexOf('.') >= 0 ? -1 : Integer.parseInt(digits);
  }

  Optional<Tree.Repetition> repetition(RepetitionContext context) {
    if (context == null || context.amount().size() < 2) {
      return Optional.empty();
    }
    Optional<Tree.Word> name = word(context.word());
    Optional<Tree.Expression> from = amount(context.amount(0));
    Optional<Tree.Expression> to = amount(context.amount(1));
    return name.isEmpty() || from.isEmpty() || to.isEmpty()
        ? Optional.empty()
        : Optional.of(new Tree.Repetition(name.get(), from.get(), to.get(), span(context)));
  }

  Optional<Tree.Subject> subject(SubjectContext context) {
    return context == null
        ? Optional.empty()
        : path(context.path()).map(p -> new Tree.Subject(p, slotSpan(context.slotSpan()), spans.of(context)));
  }

  Optional<Tree.Cited> citation(CitationContext context) {
    return text(context.STRING(0))
        .map(
            work -> new Tree.Cited(
                work,
                context.STRING().size() > 1 ? text(context.STRING(1)) : Optional.empty(),
                hasToken(context, "memory"),
                spans.of(context)));
  }

  /** Whether a direct child is this token. */
  static boolean hasToken(ParserRuleContext context, String text) {
    for (int i = 0; i < context.getChildCount(); i++) {
      if (context.getChild(i) instanceof TerminalNode node && text.equals(Literals.of(node.getSymbol().getType()))) {
        return true;
      }
    }
    return false;
  }
}
