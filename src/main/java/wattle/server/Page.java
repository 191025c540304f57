package wattle.server;

import java.util.ArrayList;
import java.util.List;
import wattle.derivation.Derivation;
import wattle.finding.Citation;
import wattle.words.Caution;

/** A few lines for a person, as Markdown. What comes from a plan is escaped, so that it shows as it was written. */
final class Page {
  /** Deepest step of a derivation that is shown; the commands that explain show all. */
  private static final int DEEPEST = 3;

  private final List<String> blocks = new ArrayList<>();

  /** A bold name and what follows it. */
  Page title(String name, String rest) {
    blocks.add("**" + escaped(name) + "**" + (rest.isEmpty() ? "" : " " + escaped(rest)));
    return this;
  }

  Page line(String text) {
    if (!text.isEmpty()) {
      blocks.add(escaped(text));
    }
    return this;
  }

  /** A figure with the steps that led to it. */
  Page chain(Derivation derivation) {
    StringBuilder list = new StringBuilder();
    step(derivation, 0, list);
    blocks.add(list.toString().stripTrailing());
    return this;
  }

  private static void step(Derivation derivation, int depth, StringBuilder list) {
    list.append("  ".repeat(depth)).append("- ").append(escaped(derivation.toString()));
    if (derivation.basis() == Derivation.Basis.ASSUMED) {
      list.append(" (not stated, assumed)");
    }
    if (!derivation.sources().isEmpty()) {
      list.append(" — ").append(escaped(String.join("; ", derivation.sources().stream().map(Citation::toString).toList())));
    }
    if (!derivation.remark().isEmpty()) {
      list.append(". ").append(escaped(derivation.remark()));
    }
    list.append('\n');
    if (depth < DEEPEST) {
      derivation.inputs().forEach(input -> step(input, depth + 1, list));
    }
  }

  /** What whoever acts on a figure must know. */
  Page caution() {
    blocks.add("*" + Caution.SHORT + "*");
    return this;
  }

  private static String escaped(String text) {
    StringBuilder safe = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if ("\\`*_{}[]<>#|~".indexOf(c) >= 0) {
        safe.append('\\');
      }
      safe.append(c == '\n' ? ' ' : c);
    }
    return safe.toString();
  }

  String markdown() {
    return String.join("\n\n", blocks);
  }
}
