package wattle.emit.document.report;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.Function;
import wattle.emit.media.text.Escape;
import wattle.derivation.Derivation;
import wattle.emit.document.report.Steps.Step;
import wattle.emit.media.page.Markup;
import wattle.emit.media.unfolded.DerivationText;

/**
 * Writes steps out, in as few letters of markup as there can be, since a house has ten thousand of them: the formula, the
 * sum, the inputs, what it rests on. An input that is short to tell is told in place; a longer one is a link to where it is
 * told once for all figures that share it.
 */
public final class LinkedSteps {
  /** Steps of an input that is told in place. */
  private static final int IN_PLACE = 6;

  /** Inputs of one step that are listed; a sum over a tower has thousands. */
  private static final int MOST_INPUTS = 200;

  /** Names of steps that are shown without their inputs. */
  private final Predicate<String> alone;

  private final Steps steps = new Steps();
  private final Map<Step, Integer> numbers = new HashMap<>();
  private final Map<String, Integer> remarks = new LinkedHashMap<>();
  private final Set<Step> linked = new HashSet<>();
  private final Deque<Step> untold = new ArrayDeque<>();

  /** Every step with its inputs. */
  public LinkedSteps() {
    this(name -> false);
  }

  /**
   * @param alone names of steps that {@link #once} tells without what they rest on, as those of a flat that is not shown since another one
   *     is like it
   */
  LinkedSteps(Predicate<String> alone) {
    this.alone = alone;
  }

  Step step(Derivation derivation) {
    return steps.of(derivation);
  }

  /** A step with its inputs, as a list; what it links to is to be {@link #shared()} on the same page. */
  String body(Step step) {
    Markup out = new Markup();
    out.open("ul", "class", "steps");
    item(out, step);
    return out.close().toString();
  }

  /** The same of a derivation. */
  public String body(Derivation derivation) {
    return body(step(derivation));
  }

  private void item(Markup out, Step step) {
    Derivation derivation = step.derivation();
    out.open("li").text(derivation.toString());
    String basis = DerivationText.basis(derivation);
    if (!basis.isEmpty()) {
      out.text(" ").raw("<i>").text(basis).raw("</i>");
    }
    if (!derivation.remark().isEmpty()) {
      out.text(" ").raw("<small>").text(derivation.remark()).raw("</small>");
    }
    if (!step.inputs().isEmpty()) {
      out.open("ul");
      for (Step input : step.inputs().subList(0, Math.min(MOST_INPUTS, step.inputs().size()))) {
        if (input.size() <= IN_PLACE) {
          item(out, input);
        } else {
          link(input);
          out.raw("<li><a href=\"#" + id(input) + "\">").text(input.derivation().name() + " = " + input.derivation().value().text())
              .raw("</a></li>\n");
        }
      }
      if (step.inputs().size() > MOST_INPUTS) {
        out.element("li", "and " + (step.inputs().size() - MOST_INPUTS) + " more inputs, which are in the tables as JSON", "class", "note");
      }
      out.close();
    }
    out.close();
  }

  /** A link to where a step is told, in words; it is told then by {@link #once}. */
  String reference(Step step, String words) {
    link(step);
    return "<a href=\"#" + id(step) + "\">" + Escape.xml(words) + "</a>";
  }

  /**
   * A step alone, for a page that tells each once: what it says, then its inputs as links by the symbols that the formula has for
   * them, its remark as one to {@link #remarks}. A house has ten thousand inputs; written out in place they were three quarters of a
   * report.
   */
  String once(Step step) {
    Derivation derivation = step.derivation();
    StringBuilder out = new StringBuilder(Escape.xml(derivation.toString()));
    String basis = DerivationText.basis(derivation);
    if (!basis.isEmpty()) {
      out.append(" <i>").append(Escape.xml(basis)).append("</i>");
    }
    if (!derivation.remark().isEmpty()) {
      int note = remarks.computeIfAbsent(derivation.remark(), r -> remarks.size() + 1);
      out.append(" <small><a href=\"#n").append(note).append("\">note ").append(note).append("</a></small>");
    }
    if (alone.test(derivation.name())) {
      return out.toString();
    }
    for (Step input : step.inputs().subList(0, Math.min(MOST_INPUTS, step.inputs().size()))) {
      String symbol = input.derivation().symbol();
      out.append(' ').append(reference(input, symbol.isEmpty() ? input.derivation().name() : symbol));
    }
    if (step.inputs().size() > MOST_INPUTS) {
      out.append(" and ").append(step.inputs().size() - MOST_INPUTS).append(" more inputs, which are in the tables as JSON");
    }
    return out.toString();
  }

  /** The remarks of the steps told by {@link #once}, by the numbers of their links, from 1. */
  List<String> remarks() {
    return List.copyOf(remarks.keySet());
  }

  /** The step that a link bears the number of, with its inputs; absent where none does. */
  public Optional<String> told(int number) {
    return linked.stream().filter(s -> s.number() == number).findFirst().map(this::body);
  }

  /** The id of the place where a step is told. */
  static String id(Step step) {
    return "s" + step.number();
  }

  /** A step told at its own place. */
  record Told(Step step, String markup) {}

  /** The number under which a step is told on paper; they are given in the order in which they are first asked for. */
  int number(Step step) {
    return numbers.computeIfAbsent(step, s -> numbers.size() + 1);
  }

  /** A step in one paragraph, for paper: what it is computed from is named with its value, and told under a number of its own. */
  String sentence(Step step) {
    Markup out = new Markup();
    Derivation derivation = step.derivation();
    out.text(derivation.toString());
    parenthesis(out, derivation);
    // What a table was looked up by stands in the words that name the place in the table.
    if (!step.inputs().isEmpty() && derivation.basis() != Derivation.Basis.LOOKED_UP) {
      out.text("; from ");
      List<Step> inputs = step.inputs().subList(0, Math.min(MOST_INPUTS, step.inputs().size()));
      for (int i = 0; i < inputs.size(); i++) {
        Step input = inputs.get(i);
        String comma = i + 1 < inputs.size() ? ", " : "";
        String named = input.derivation().name() + " " + input.derivation().value().text();
        if (input.derivation().basis() == Derivation.Basis.COMPUTED && !input.inputs().isEmpty()) {
          link(input);
          out.raw("<a href=\"#" + id(input) + "\">").text(named + " [" + number(input) + "]" + comma.strip()).raw("</a>")
              .text(comma.isEmpty() ? "" : " "); // a line must not begin with a comma
        } else {
          out.text(named);
          parenthesis(out, input.derivation());
          out.text(comma);
        }
      }
      if (step.inputs().size() > MOST_INPUTS) {
        out.text(" and " + (step.inputs().size() - MOST_INPUTS) + " more");
      }
    }
    return out.toString();
  }

  private static void parenthesis(Markup out, Derivation derivation) {
    String basis = DerivationText.basis(derivation);
    if (!basis.isEmpty()) {
      out.text(" (" + basis + ")");
    }
  }

  private void link(Step step) {
    if (linked.add(step)) {
      untold.add(step);
    }
  }

  /**
   * All steps that were linked to, and those that these link to.
   *
   * @param elsewhere steps that are told already
   * @param telling {@link #body} or {@link #sentence}
   */
  List<Told> shared(Set<Step> elsewhere, Function<Step, String> telling) {
    List<Told> told = new ArrayList<>();
    for (Step next = untold.poll(); next != null; next = untold.poll()) {
      if (!elsewhere.contains(next)) {
        told.add(new Told(next, telling.apply(next)));
      }
    }
    return told;
  }
}
