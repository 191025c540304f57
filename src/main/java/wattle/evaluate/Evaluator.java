package wattle.evaluate;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.syntax.Tree;

/**
 * Works out expressions. Every method tells what is wrong to the given consumer, once, and then answers with an empty
 * value.
 */
public final class Evaluator {
  /** Stands for a constant whose value could not be worked out, which has been told where it is written, and is not told again. */
  public static final Quantity WITHOUT_VALUE = Quantity.of(Double.NaN, Units.ONE);

  /** In SI units; no unit makes a figure of a house larger than this, or smaller than its inverse and yet not 0. */
  private static final double LARGEST = 1e12;

  private static final Set<Dimension> ABOVE_ZERO = Set.of(
      Dimension.CURRENT, Dimension.POWER, Dimension.VOLTAGE, Dimension.FREQUENCY, Dimension.AREA, Dimension.VOLUME);
  private static final Set<Dimension> NOT_BELOW_ZERO = Set.of(Dimension.LENGTH, Dimension.RESISTANCE, Dimension.TIME);

  private final Map<String, Quantity> constants;
  private final Consumer<Finding> findings;
  /** Names of the constants; more may have been added since somebody asked for them. */
  private Optional<KnownNames> known = Optional.empty();

  /**
   * @param constants what {@code let} has named
   * @param findings takes what is noticed
   */
  public Evaluator(Map<String, Quantity> constants, Consumer<Finding> findings) {
    this.constants = constants;
    this.findings = findings;
  }

  /**
   * The value of an expression that must be of a dimension.
   *
   * @param what what the figure is, as in {@code a breaker rating}
   */
  public Optional<Quantity> valueOf(Tree.Expression expression, Dimension expected, String what) {
    Optional<Quantity> value = valueOf(expression);
    if (value.isEmpty() || value.get().dimension().equals(expected)) {
      return value;
    }
    findings.accept(
        isBare(expression) ? unitMissing(expression, expected, what) : mismatch(expression, value.get(), expected, what));
    return Optional.empty();
  }

  /**
   * As {@link #valueOf(Tree.Expression, Dimension, String)}, of a figure that a thing has: a current, a power, a voltage, a
   * frequency, an area or a volume of 0 is none, and no length, count of ohms or of seconds is below 0.
   */
  public Optional<Quantity> statedOf(Tree.Expression expression, Dimension expected, String what) {
    return valueOf(expression, expected, what).filter(value -> isStatable(value, expression, what));
  }

  /** Whether a thing can have such a figure; reported where it cannot. */
  public boolean isStatable(Quantity value, Tree.Expression expression, String what) {
    boolean aboveZero = ABOVE_ZERO.contains(value.dimension());
    boolean fits = aboveZero ? value.si() > 0 : !NOT_BELOW_ZERO.contains(value.dimension()) || value.si() >= 0;
    if (!fits) {
      findings.accept(
          Finding.error(Mistake.FIGURE_NOT_POSITIVE, what + " cannot be " + value)
              .at(expression.span(), aboveZero ? "more than 0 is expected here" : "0 or more is expected here")
              .build());
    }
    return fits;
  }

  /** A whole number of things, at least {@code least} and at most {@code most}. */
  public Optional<Integer> countOf(Tree.Expression expression, String what, int least, int most) {
    Optional<Quantity> value = valueOf(expression, Dimension.NONE, what);
    if (value.isEmpty()) {
      return Optional.empty();
    }
    double number = value.get().si();
    if (number != Math.rint(number) || number < least || number > most) {
      findings.accept(
          Finding.error("count-out-of-range", what + " cannot be " + expression.span().text())
              .at(expression.span(), "a whole number from " + least + " to " + most + " is expected here")
              .build());
      return Optional.empty();
    }
    return Optional.of((int) number);
  }

  /** The value of an expression, whatever its dimension. */
  public Optional<Quantity> valueOf(Tree.Expression expression) {
    if (expression instanceof Tree.Figure figure) {
      return figure(figure);
    }
    if (expression instanceof Tree.FeetInches length) {
      Unit foot = Units.find("ft").orElseThrow();
      return Optional.of(Quantity.of(length.feet() + length.inches() / 12, foot));
    }
    if (expression instanceof Tree.Reference reference) {
      return reference(reference);
    }
    if (expression instanceof Tree.Negation negation) {
      return valueOf(negation.operand()).map(Quantity::negate);
    }
    if (expression instanceof Tree.Binary binary) {
      return binary(binary);
    }
    if (expression instanceof Tree.Given given) {
      return given(given);
    }
    throw new AssertionError(expression);
  }

  /** What is given for a parameter was looked at where it is given; only that a name is no figure shows here. */
  private Optional<Quantity> given(Tree.Given given) {
    if (given.origin() instanceof Tree.Reference name && !constants.containsKey(name.path().text())) {
      findings.accept(
          Finding.error("argument-kind", "'" + name.path().text() + "' is given where a figure is needed")
              .at(name.span(), "a figure or a name given by let is expected here")
              .with(given.span(), "used as a figure here")
              .build());
    }
    return given.argument().flatMap(new Evaluator(constants, f -> {})::valueOf);
  }

  private Optional<Quantity> figure(Tree.Figure figure) {
    if (figure.unit().isEmpty()) {
      return bounded(Quantity.of(figure.number(), Units.ONE), figure.span());
    }
    Tree.Word written = figure.unit().get();
    Optional<Unit> unit = Units.find(written.text());
    if (unit.isEmpty()) {
      List<String> near = NearNames.of(written.text(), Units.spellings());
      Finding.Builder finding = Finding.error(Mistake.UNIT_UNKNOWN, "no unit is called '" + written.text() + "'")
          .at(written.span(), "a unit is expected here");
      near.forEach(n -> finding.fix(Fix.safe("write " + n, written.span(), n)));
      findings.accept(finding.build());
      return Optional.empty();
    }
    return bounded(Quantity.of(figure.number(), unit.get()), figure.span());
  }

  /** Beyond these bounds sums of squares overflow or vanish, and every figure that comes of them with them. */
  private Optional<Quantity> bounded(Quantity value, Span span) {
    double size = Math.abs(value.si());
    if (size <= LARGEST && (size == 0 || size >= 1 / LARGEST)) {
      return Optional.of(value);
    }
    boolean large = !(size < 1);
    findings.accept(
        Finding.error(large ? "figure-too-large" : "figure-too-small", "a figure is too " + (large ? "large" : "small") + " to work with")
            .at(span, large ? "too large for any house" : "too small for any house; write 0 if none is meant")
            .build());
    return Optional.empty();
  }

  private Optional<Quantity> reference(Tree.Reference reference) {
    String name = reference.path().text();
    Quantity value = constants.get(name);
    if (value == null) {
      Finding.Builder finding = Finding.error(Mistake.NAME_UNKNOWN, "nothing is called '" + name + "'")
          .at(reference.span(), "a figure or a name given by let is expected here");
      difference(reference.span(), name)
          .ifPresent(d -> finding.fix(Fix.safe("write " + d + ", with blanks around the sign", reference.span(), d)));
      for (String near : near(name)) {
        finding.fix(Fix.safe("write " + near, reference.span(), near));
      }
      findings.accept(finding.build());
      return Optional.empty();
    }
    return Double.isNaN(value.si()) ? Optional.empty() : Optional.of(value);
  }

  private List<String> near(String name) {
    if (known.isEmpty() || known.get().names().size() != constants.size()) {
      known = Optional.of(new KnownNames(Set.copyOf(constants.keySet())));
    }
    return known.get().near(name);
  }

  /** A hyphen joins a name: {@code n-3} is one name, where the number less than a known one was meant. */
  private Optional<String> difference(Span span, String name) {
    int hyphen = name.lastIndexOf('-');
    if (hyphen < 1 || !name.substring(hyphen + 1).chars().allMatch(Character::isDigit)) {
      return Optional.empty();
    }
    String known = name.substring(0, hyphen);
    boolean isKnown = constants.containsKey(known)
        || span.source().placed().stream()
            .flatMap(p -> p.chain().stream())
            .anyMatch(p -> p.differs(known) || constants.containsKey(p.name() + "." + known));
    return isKnown ? Optional.of(known + " - " + name.substring(hyphen + 1)) : Optional.empty();
  }

  private Optional<Quantity> binary(Tree.Binary binary) {
    Optional<Quantity> left = valueOf(binary.left());
    Optional<Quantity> right = valueOf(binary.right());
    if (left.isEmpty() || right.isEmpty()) {
      return Optional.empty();
    }
    boolean additive = binary.operator() == Tree.Operator.PLUS || binary.operator() == Tree.Operator.MINUS;
    if (additive && !left.get().dimension().equals(right.get().dimension())) {
      findings.accept(
          Finding.error(
              Mistake.DIMENSION_MISMATCH,
              left.get() + " and " + right.get() + " cannot be "
                  + (binary.operator() == Tree.Operator.PLUS ? "added" : "subtracted"))
              .at(binary.right().span(), left.get().dimension().trade() + " is expected here")
              .with(binary.left().span(), left.get().dimension().trade())
              .build());
      return Optional.empty();
    }
    Quantity result = switch (binary.operator()) {
      case PLUS -> left.get().plus(right.get());
      case MINUS -> left.get().minus(right.get());
      case TIMES -> left.get().times(right.get());
      case DIVIDED_BY -> left.get().dividedBy(right.get());
    };
    if (!Double.isFinite(result.si())) {
      findings.accept(
          Finding.error(Mistake.DIVISION_BY_ZERO, "an expression has no finite value")
              .at(binary.span(), "divides by zero or grows beyond bounds")
              .build());
      return Optional.empty();
    }
    return bounded(result, binary.span());
  }

  private static boolean isBare(Tree.Expression expression) {
    return expression instanceof Tree.Given given
        ? isBare(given.origin())
        : expression instanceof Tree.Figure figure && figure.unit().isEmpty();
  }

  /** The finding about a figure without its unit. */
  public static Finding unitMissing(Tree.Expression expression, Dimension expected, String what) {
    Tree.Expression written = expression instanceof Tree.Given given ? given.origin() : expression;
    Span span = written.span();
    Finding.Builder finding = Finding.error(Mistake.UNIT_MISSING, what + " needs a unit").at(span, expected.trade() + " is expected here");
    if (expression instanceof Tree.Given given) {
      finding.with(given.span(), "used here");
      if (!span.text().matches("[0-9.]+")) {
        String unit = Units.of(expected).stream().findFirst().map(u -> " * 1 " + u.symbol()).orElse("");
        return finding.fix("write a figure with its unit, as in (" + span.text() + unit + ")").build();
      }
    }
    List<Unit> units = Units.of(expected);
    // With one usual unit the fix spells out what was meant; with several it would choose for the reader.
    if (units.size() == 1) {
      String text = span.text() + " " + units.get(0).symbol();
      finding.fix(Fix.safe("write " + text, span, text));
    } else {
      units.stream()
          .limit(3)
          .map(unit -> span.text() + " " + unit.symbol())
          .forEach(text -> finding.fix(Fix.offered("write " + text, span, text)));
    }
    return finding.build();
  }

  private static Finding mismatch(Tree.Expression expression, Quantity found, Dimension expected, String what) {
    Finding.Builder finding = Finding.error(Mistake.DIMENSION_MISMATCH, what + " cannot be " + found);
    return expression instanceof Tree.Given given
        ? finding.at(given.origin().span(), expected.trade() + " is expected here").with(given.span(), "used here").build()
        : finding.at(expression.span(), expected.trade() + " is expected here").build();
  }
}
