package wattle.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.model.Event;
import wattle.model.Trial;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/** Reads what was clicked together and typed: first each text for itself, then all events as one trial of the house. */
final class Lines {
  /** Under which name the lines are read; no file of a plan is called so. */
  private static final String SOURCE = "the live page";

  private static final String HEAD = "trial asked {\n";

  private Lines() {}

  static List<Line> of(Compilation plan, List<String> texts) {
    List<String> events = new ArrayList<>();
    Map<Integer, Line> refused = new TreeMap<>();
    for (String text : texts.stream().filter(t -> !t.isBlank()).toList()) {
      Checked<PlanTree> parsed = PlanParser.parse(block(text));
      List<Tree.Event> found = parsed.value().items().size() == 1 && parsed.value().items().get(0) instanceof Tree.Trial t
          ? t.events()
          : List.of();
      Optional<Finding> error = parsed.findings().stream().filter(f -> f.severity() == Severity.ERROR).findFirst();
      if (error.isPresent() || found.isEmpty()) {
        String why = error.map(Finding::headline).orElse("no event of a trial");
        refused.put(events.size(), new Line(text.strip(), Optional.empty(), why));
        events.add("");
      } else {
        // A text may hold several; from here on each is a line of its own.
        found.forEach(e -> events.add(e.span().text().replaceAll("\\s+", " ")));
      }
    }
    return bound(plan, events, refused);
  }

  private static Source block(String body) {
    return new Source(SOURCE, HEAD + body + "\n}\n");
  }

  /** Line n of the block is event n − 2: the head is the first. */
  private static List<Line> bound(Compilation plan, List<String> events, Map<Integer, Line> refused) {
    Checked<List<Trial>> read = Compiler.trials(plan, block(String.join("\n", events)));
    Map<Integer, Event> byLine = new TreeMap<>();
    read.value().forEach(t -> t.events().forEach(e -> byLine.put(e.span().line() - 2, e)));
    Map<Integer, String> complaints = new TreeMap<>();
    read.findings().forEach(f -> f.place().ifPresent(m -> complaints.putIfAbsent(m.span().line() - 2, f.headline())));
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < events.size(); i++) {
      Optional<Event> event = Optional.ofNullable(byLine.get(i));
      String complaint = complaints.getOrDefault(i, event.isPresent() ? "" : "nothing of this plan");
      lines.add(refused.getOrDefault(i, new Line(events.get(i), event, complaint)));
    }
    return lines;
  }
}
