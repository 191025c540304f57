package wattle.server;

import java.util.List;
import java.util.Optional;
import wattle.compiler.StructurePages;
import wattle.finding.Finding;
import wattle.syntax.Tree;

/** What a rule asks for and why, where it is from, and what it has found in the plan at hand. */
final class RulePages {
  private RulePages() {}

  static Page of(String name, LibraryTexts library, Analysis analysis) {
    Optional<Tree.Rule> rule = library.rule(name, analysis.compilation().library());
    Page page = new Page().title("rule " + name, rule.flatMap(Tree.Rule::title).map(Tree.Text::value).orElse(""));
    rule.ifPresentOrElse(r -> describe(r, page), () -> Optional.ofNullable(StructurePages.all().get(name)).ifPresent(page::line));
    List<Finding> found = analysis.compilation().findings().stream().filter(f -> f.rule().equals(name)).toList();
    found.forEach(f -> page.line("Here: " + f.headline() + f.silenced().map(why -> " — silenced: " + why).orElse("")));
    if (found.isEmpty()) {
      page.line("It finds nothing in this plan.");
    }
    return rule.isPresent() ? page.line("More: wattle explain " + name).caution() : page;
  }

  private static void describe(Tree.Rule rule, Page page) {
    rule.reason().ifPresent(reason -> page.line(reason.value()));
    rule.scope()
        .ifPresent(s -> page.line("For each " + s.kind().text() + s.filter().map(f -> " where " + f.span().text()).orElse("") + ":"));
    rule.work().ifPresent(w -> page.line(w.span().text()));
    rule.requirements().forEach(r -> page.line("require " + r.span().text()));
    for (Tree.Cited source : rule.citations()) {
      page.line(
          "Source: " + source.work().value() + source.place().map(p -> " " + p.value()).orElse("")
              + (source.fromMemory() ? " (from memory, to be verified)" : ""));
    }
  }
}
