package wattle.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import wattle.compiler.Compilation;
import wattle.edit.Formatter;
import wattle.finding.Source;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * What a file says that is no thing of its own house: patterns that other files place, and parts, cables, tables, limits and
 * rules. A comparison of houses would not show that they changed, so tools that show one file are given their text, in order.
 */
final class WrittenItems {
  private WrittenItems() {}

  /** The lines of each, by the words that it begins with. */
  private static SortedMap<String, List<String>> of(Compilation plan) {
    SortedMap<String, List<String>> written = new TreeMap<>();
    for (PlanTree file : plan.files().subList(0, Math.min(1, plan.files().size()))) {
      for (Tree.Item item : file.items()) {
        boolean own = item instanceof Tree.Pattern pattern && !plan.house().placements().containsValue(pattern.name().text())
            || item instanceof Tree.Part || item instanceof Tree.CableType || item instanceof Tree.Table || item instanceof Tree.Limit
            || item instanceof Tree.Rule;
        if (own) {
          String text = Formatter.format(new Source(file.source().name(), item.span().text())).value();
          String head = text.substring(0, Math.max(0, text.indexOf('{'))).strip();
          written.computeIfAbsent(head, h -> new ArrayList<>()).addAll(text.lines().filter(l -> !l.isBlank()).skip(1).toList());
        }
      }
    }
    return written;
  }

  /** All of them as lines, for tools that compare texts. */
  static void describe(Compilation plan, PrintWriter out) {
    of(plan).forEach((head, lines) -> {
      out.println(head);
      lines.forEach(out::println);
    });
  }

  /** Which of them differ; whether any does. */
  static boolean compare(Compilation before, Compilation after, PrintWriter out) {
    SortedMap<String, List<String>> old = of(before);
    SortedMap<String, List<String>> now = of(after);
    TreeSet<String> heads = new TreeSet<>(old.keySet());
    heads.addAll(now.keySet());
    heads.removeIf(h -> old.containsKey(h) && now.containsKey(h) && old.get(h).equals(now.get(h)));
    for (String head : heads) {
      if (!old.containsKey(head)) {
        out.println("+ " + head);
      } else if (!now.containsKey(head)) {
        out.println("- " + head);
      } else {
        out.println("~ " + head + ": its text; compare a plan that uses it for the effect");
      }
    }
    return !heads.isEmpty();
  }
}
