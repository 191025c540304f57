package wattle.server;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import wattle.syntax.Tree;

/** What there is to know of a pattern, of a placement and of a parameter. */
final class PatternPages {
  private static final int NAMED = 6;

  private PatternPages() {}

  static Optional<Page> of(Named thing, Analysis analysis) {
    return switch (thing.kind()) {
      case PATTERN ->
        pattern(thing.name(), analysis).map(p -> new Page().title(heading(p), "pattern").line(placements(thing.name(), analysis)));
      case PLACEMENT -> placement(thing, analysis);
      case PARAMETER ->
        Optional.of(
            new Page().title(thing.name(),
                thing.pattern().contains("@") ? "each number of the repetition" : "parameter of pattern " + thing.pattern()));
      default -> Optional.empty();
    };
  }

  private static Optional<Page> placement(Named thing, Analysis analysis) {
    return analysis
        .items(thing.pattern()).stream()
        .filter(i -> i instanceof Tree.Placing placing && placing.name().text().equals(thing.name()))
        .map(i -> ((Tree.Placing) i))
        .findFirst()
        .map(placing -> new Page().title(thing.name(), "placement")
            .line("of " + pattern(placing.pattern().text(), analysis).map(PatternPages::heading).orElse(placing.pattern().text())));
  }

  static String heading(Tree.Pattern pattern) {
    String parameters = pattern.parameters().stream().map(Tree.Word::text).collect(Collectors.joining(", "));
    return pattern.name() + (parameters.isEmpty() ? "" : "(" + parameters + ")");
  }

  private static Optional<Tree.Pattern> pattern(String name, Analysis analysis) {
    return analysis.items().stream()
        .filter(i -> i instanceof Tree.Pattern pattern && pattern.name().text().equals(name))
        .map(i -> (Tree.Pattern) i)
        .findFirst();
  }

  private static String placements(String pattern, Analysis analysis) {
    List<String> names = analysis.house().placements().entrySet().stream().filter(p -> p.getValue().equals(pattern)).map(Map.Entry::getKey)
        .toList();
    return names.isEmpty()
        ? "not placed"
        : "placed as " + String.join(", ", names.subList(0, Math.min(NAMED, names.size())))
            + (names.size() > NAMED ? " and " + (names.size() - NAMED) + " more" : "");
  }
}
