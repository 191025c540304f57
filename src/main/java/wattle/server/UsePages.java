package wattle.server;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/** What there is to know of a {@code use} line: the file that it names and what is in it, or the pack. */
final class UsePages {
  private UsePages() {}

  static Page of(Tree.Use use, Question question) {
    return use.quoted() ? file(use, question) : pack(use, question.analysis());
  }

  private static Page pack(Tree.Use use, Analysis analysis) {
    String name = use.target().text();
    Map<String, String> packs = analysis.compilation().library().packs();
    // A pack is named with the folder of its kind in the library, and without it in a plan.
    Optional<String> title = packs.entrySet().stream()
        .filter(p -> p.getKey().equals(name) || p.getKey().endsWith("/" + name))
        .map(Map.Entry::getValue)
        .findFirst();
    return new Page().title((use.kind().map(k -> k.text() + " ").orElse("")) + name, title.orElse(""))
        .line(title.isPresent() ? "" : "the library has no such pack");
  }

  private static Page file(Tree.Use use, Question question) {
    Page page = new Page().title(use.target().text(), "");
    Optional<Path> path = path(use, question.file());
    Optional<PlanTree> tree = path.flatMap(question.analysis()::tree);
    if (tree.isEmpty()) {
      return page.line("not read: " + (path.isEmpty() ? "this is not a file path" : "no plan can be read there"));
    }
    page.line("file " + path.get());
    tree.get().items().stream()
        .filter(i -> i instanceof Tree.Heading heading && heading.title().isPresent())
        .findFirst()
        .ifPresent(i -> page.line("titled \"" + ((Tree.Heading) i).title().get().value() + "\""));
    String held = held(tree.get());
    page.line(held.isEmpty() ? "nothing is in it yet" : "in it: " + held);
    long found = question.analysis().findingsIn(path.get()).stream().filter(f -> f.silenced().isEmpty()).count();
    return page.line(found == 0 ? "" : found + (found == 1 ? " finding there" : " findings there"));
  }

  private static Optional<Path> path(Tree.Use use, Path from) {
    try {
      return Optional.of(from.resolveSibling(use.target().text()).normalize());
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** {@code 2 panels, branch hall, 5 rooms}: one of a kind by its name. */
  private static String held(PlanTree tree) {
    Map<String, List<String>> names = new LinkedHashMap<>();
    for (Tree.Item item : tree.items()) {
      if (item instanceof Tree.Panel panel) {
        add(names, "panel", panel.name());
      } else if (item instanceof Tree.Service service) {
        add(names, "service", service.name());
      } else if (item instanceof Tree.Branch branch) {
        add(names, "branch", branch.name());
      } else if (item instanceof Tree.Room room) {
        add(names, "room", room.name());
      } else if (item instanceof Tree.Raceway raceway) {
        add(names, "raceway", raceway.name());
      } else if (item instanceof Tree.Pattern pattern) {
        add(names, "pattern", pattern.name());
      } else if (item instanceof Tree.Trial trial) {
        add(names, "trial", trial.name());
      } else if (item instanceof Tree.Part part) {
        add(names, "part", part.name().get(0));
      } else if (item instanceof Tree.CableType cable) {
        add(names, "cable", cable.name());
      } else if (item instanceof Tree.Rule rule) {
        add(names, "rule", rule.name());
      }
    }
    List<String> told = new ArrayList<>();
    names.forEach((kind, list) -> told.add(list.size() == 1 ? kind + " " + list.get(0) : list.size() + " " + plural(kind)));
    return String.join(", ", told);
  }

  private static String plural(String kind) {
    return kind.endsWith("ch") ? kind + "es" : kind + "s";
  }

  private static void add(Map<String, List<String>> names, String kind, Tree.Word name) {
    names.computeIfAbsent(kind, k -> new ArrayList<>()).add(name.text());
  }
}
