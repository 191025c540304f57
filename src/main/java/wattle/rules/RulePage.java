package wattle.rules;

import wattle.syntax.Tree;
import wattle.words.Caution;

/** A rule as a page to read. */
public final class RulePage {
  private static final int WIDEST = 99;

  private RulePage() {}

  /** Title, reason, source, a plan that passes and one that does not. */
  public static String text(Rule rule) {
    return text(rule, WIDEST);
  }

  /** @param columns of a line of the reason, at most */
  public static String text(Rule rule, int columns) {
    StringBuilder out = new StringBuilder();
    out.append(rule.name()).append(" (").append(rule.severity()).append(", pack ").append(rule.pack()).append(")\n");
    out.append(rule.title()).append(".\n\n").append(wrapped(rule.reason(), Math.min(columns, WIDEST))).append('\n');
    rule.citations().forEach(c -> out.append("\nsource: ").append(c).append('\n'));
    out.append("\nrequires:\n");
    rule.tree().scope().ifPresent(s -> out.append("  for each ").append(s.kind().text())
        .append(s.filter().map(f -> " where " + f.span().text()).orElse("")).append('\n'));
    rule.tree().work().ifPresent(w -> out.append("  ").append(w.span().text()).append('\n'));
    rule.tree().requirements().forEach(r -> out.append("  require ").append(r.span().text()).append('\n'));
    rule.accept().ifPresent(plan -> out.append("\npasses:\n").append(indented(plan)));
    for (Tree.RuleException exception : rule.exceptions()) {
      if (exception.denied()) {
        out.append("\nno exception: ").append(exception.article().value()).append(".\n");
      }
      exception.plan().ifPresent(
          plan -> out.append("\npasses by an exception, ").append(exception.article().value()).append(":\n")
              .append(indented(plan.value())));
    }
    if (rule.tree().reject().isPresent()) {
      Tree.RuleReject reject = rule.tree().reject().get();
      if (reject.replaced().isPresent() && reject.by().isPresent()) {
        String by = reject.by().get().value().strip();
        out.append("\ndoes not pass, once ‘").append(reject.replaced().get().value().strip()).append("’ ");
        out.append(by.isEmpty() ? "is taken out" : "is changed to ‘" + by + "’").append(".\n");
      } else {
        rule.reject().ifPresent(plan -> out.append("\ndoes not pass:\n").append(indented(plan)));
      }
    }
    out.append("\n" + Caution.SHORT + "\n");
    return out.toString();
  }

  private static String wrapped(String text, int columns) {
    StringBuilder out = new StringBuilder();
    int column = 0;
    for (String word : text.split(" ")) {
      if (column > 0 && column + word.length() > columns) {
        out.append('\n');
        column = 0;
      }
      out.append(column > 0 ? " " : "").append(word);
      column += word.length() + 1;
    }
    return out.toString();
  }

  private static String indented(String plan) {
    StringBuilder out = new StringBuilder();
    String[] lines = plan.split("\n");
    int margin = java.util.Arrays.stream(lines).filter(l -> !l.isBlank()).mapToInt(l -> l.length() - l.stripLeading().length()).min()
        .orElse(0);
    for (String line : lines) {
      if (!line.isBlank()) {
        out.append("  ").append(line.substring(Math.min(margin, line.length()))).append('\n');
      }
    }
    return out.toString();
  }
}
