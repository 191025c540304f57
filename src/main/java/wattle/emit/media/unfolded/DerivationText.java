package wattle.emit.media.unfolded;

import wattle.derivation.Derivation;
import wattle.emit.media.text.Escape;
import wattle.finding.Citation;

/** Writes a derivation out, each input beneath the figure that it led to. */
public final class DerivationText {
  private DerivationText() {}

  /** One line a figure, inputs indented beneath it; ends in a line end. */
  public static String text(Derivation derivation) {
    return text(derivation, Integer.MAX_VALUE);
  }

  /** @param deepest how many levels of inputs are shown under the figure */
  public static String text(Derivation derivation, int deepest) {
    StringBuilder out = new StringBuilder();
    text(out, derivation, 0, deepest);
    return out.toString();
  }

  private static void text(StringBuilder out, Derivation derivation, int depth, int deepest) {
    out.append("  ".repeat(depth)).append(derivation);
    String basis = basis(derivation);
    if (!basis.isEmpty()) {
      out.append("   (").append(basis).append(')');
    }
    out.append('\n');
    if (!derivation.remark().isEmpty()) {
      out.append("  ".repeat(depth + 1)).append(derivation.remark()).append('\n');
    }
    if (depth < deepest) {
      derivation.inputs().forEach(input -> text(out, input, depth + 1, deepest));
    }
  }

  /** What a step rests on, in words: {@code assumed}, or the table and its source. */
  public static String basis(Derivation derivation) {
    String sources = String.join("; ", derivation.sources().stream().map(Citation::toString).toList());
    return switch (derivation.basis()) {
      case STATED -> join("stated", sources);
      case COUNTED -> join("counted", sources);
      case ASSUMED -> join("assumed", sources);
      case LOOKED_UP -> join(derivation.formula(), sources);
      case COMPUTED -> sources;
    };
  }

  private static String join(String one, String other) {
    return one.isEmpty() ? other : other.isEmpty() ? one : one + "; " + other;
  }

  /** The same as a nested list of HTML. */
  public static String html(Derivation derivation) {
    return html(derivation, Integer.MAX_VALUE);
  }

  /** @param deepest how many levels of inputs are shown under the figure */
  public static String html(Derivation derivation, int deepest) {
    StringBuilder out = new StringBuilder("<ul class=\"steps\">");
    html(out, derivation, deepest);
    return out.append("</ul>").toString();
  }

  private static void html(StringBuilder out, Derivation derivation, int deepest) {
    out.append("<li>").append(Escape.xml(derivation.toString()));
    String basis = basis(derivation);
    if (!basis.isEmpty()) {
      out.append(" <i>").append(Escape.xml(basis)).append("</i>");
    }
    if (!derivation.remark().isEmpty()) {
      out.append(" <small>").append(Escape.xml(derivation.remark())).append("</small>");
    }
    if (deepest > 0 && !derivation.inputs().isEmpty()) {
      out.append("<ul>");
      derivation.inputs().forEach(input -> html(out, input, deepest - 1));
      out.append("</ul>");
    }
    out.append("</li>");
  }
}
