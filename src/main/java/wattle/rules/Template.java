package wattle.rules;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import wattle.finding.Finding;
import wattle.finding.Span;
import wattle.model.House;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** A message with holes: {@code the {r.breaker.rating} breaker of '{r.branch.name}'}. */
final class Template {
  /** Of no words. */
  static final Template NONE = new Template(List.of(""), List.of());

  /** Of a figure that would look like another; beyond them the two are one but for the rounding of the machine. */
  private static final int MOST_PLACES = 6;

  /** Text, then a hole after each but the last. */
  private final List<String> texts;

  private final List<Hole> holes;

  private record Hole(String name, Term term) {}

  private Template(List<String> texts, List<Hole> holes) {
    this.texts = texts;
    this.holes = holes;
  }

  /** Checks each hole; one that asks for nothing that there is gives a finding at the text. */
  static Optional<Template> check(Tree.Text text, PathChecker paths, Names names, Consumer<Finding> findings) {
    List<String> texts = new ArrayList<>();
    List<Hole> holes = new ArrayList<>();
    String words = text.value();
    int end = 0;
    boolean whole = true;
    for (int close = words.indexOf('}'); close >= 0; close = words.indexOf('}', close + 1)) {
      int open = words.lastIndexOf('{', close);
      if (open < end) {
        continue; // a brace that nothing opens is text
      }
      texts.add(words.substring(end, open));
      end = close + 1;
      String path = words.substring(open + 1, close);
      List<String> steps = steps(path);
      if (!steps.stream().allMatch(Template::isWord)) {
        findings.accept(
            Finding.error("rule-hole-unreadable", "a message has the hole {" + path + "}")
                .at(text.span(), "a property such as {r.length} is expected in a hole")
                .build());
        return Optional.empty();
      }
      Optional<Typed> typed = paths.check(steps, holeSpan(text, path), names);
      whole &= typed.isPresent();
      typed.ifPresent(t -> holes.add(new Hole(path, t.term())));
    }
    texts.add(words.substring(end));
    return whole ? Optional.of(new Template(texts, holes)) : Optional.empty();
  }

  private static List<String> steps(String path) {
    List<String> steps = new ArrayList<>();
    int from = 0;
    for (int dot = path.indexOf('.'); dot >= 0; dot = path.indexOf('.', from)) {
      steps.add(path.substring(from, dot));
      from = dot + 1;
    }
    steps.add(path.substring(from));
    return steps;
  }

  private static boolean isWord(String step) {
    return !step.isEmpty()
        && (Character.isLetter(step.charAt(0)) || step.charAt(0) == '_')
        && step.chars().allMatch(c -> Character.isLetterOrDigit(c) || c == '_' || c == '-');
  }

  /** Where the hole stands, so far as the text was written without escapes. */
  private static Span holeSpan(Tree.Text text, String path) {
    int at = text.span().text().indexOf("{" + path + "}");
    int start = text.span().start() + at + 1;
    return at < 0 ? text.span() : text.span().source().span(start, start + path.length());
  }

  /** Puts the values in; a value that is not known is a question mark. */
  String fill(Filling from) {
    StringBuilder out = new StringBuilder(texts.get(0));
    House plan = from.facts().house();
    for (int i = 0; i < holes.size(); i++) {
      Object value = holes.get(i).term.of(from.facts(), from.named());
      from.figures().putIfAbsent(holes.get(i).name, shown(value, plan));
      out.append(value instanceof Quantity quantity ? rounded(quantity, plan, from.compared()) : shown(value, plan))
          .append(texts.get(i + 1));
    }
    return out.toString();
  }

  /** The text with its values; absent where one of them is not known. */
  Optional<String> filled(Facts facts, Object[] named) {
    StringBuilder out = new StringBuilder(texts.get(0));
    for (int i = 0; i < holes.size(); i++) {
      Object value = holes.get(i).term.of(facts, named);
      if (value == null) {
        return Optional.empty();
      }
      out.append(shown(value, facts.house())).append(texts.get(i + 1));
    }
    return Optional.of(out.toString());
  }

  /**
   * As the trade rounds: 3.7 %, 23.9 A, 132 A; with more digits where it would look like another figure that the rule compares it with, as
   * 3.04 % would look like a limit of 3 %. What is kept beside a finding has all digits.
   */
  private static String rounded(Quantity quantity, House plan, List<Quantity> compared) {
    Quantity inUnits = plan.units().shown(quantity);
    String exact = inUnits.toString();
    int places = exact.endsWith(" %") ? 1 : exact.endsWith(" A") ? (Math.abs(quantity.si()) < 100 ? 1 : 0) : -1;
    if (places < 0) {
      return exact;
    }
    List<Quantity> others = compared.stream().map(q -> plan.units().shown(q))
        .filter(q -> q.unit().equals(inUnits.unit()) && q.value() != inUnits.value()).toList();
    String unit = exact.substring(exact.indexOf(' '));
    for (int digits = places; digits <= MOST_PLACES; digits++) {
      BigDecimal shown = rounded(inUnits, digits);
      int kept = digits;
      if (others.stream().noneMatch(o -> rounded(o, kept).equals(shown))) {
        return digits == places && exact.indexOf('.') < 0 ? exact : shown + unit;
      }
    }
    return exact;
  }

  private static BigDecimal rounded(Quantity quantity, int places) {
    return BigDecimal.valueOf(quantity.value()).setScale(places, RoundingMode.HALF_EVEN);
  }

  private static String shown(Object value, House plan) {
    if (value == null) {
      return "?";
    }
    if (value instanceof Collection<?> many) {
      return String.join(", ", many.stream().map(v -> shown(v, plan)).toList());
    }
    if (value instanceof Quantity quantity) {
      return plan.units().shown(quantity).toString();
    }
    if (value instanceof Boolean truth) {
      return truth ? "yes" : "no";
    }
    if (value instanceof House house) {
      return house.title().orElse("the plan");
    }
    return Facts.nameOf(value).orElseGet(value::toString);
  }
}
