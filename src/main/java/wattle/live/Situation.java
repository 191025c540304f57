package wattle.live;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.compiler.Compilation;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Mistake;
import wattle.model.Device;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Trial;
import wattle.trials.Danger;
import wattle.trials.TrialResult;

/**
 * A house in what was clicked together: the lines, the trial that they are, and what comes of it.
 *
 * @param trial name for the trial, which no trial of the plan has
 * @param complaints of running it: events that cannot happen, loads that cannot be served
 */
record Situation(
    Compilation plan, List<Line> lines, String trial, TrialResult result, List<Danger> dangers, List<Finding> complaints) {
  private static final String USUAL_NAME = "what-if";

  Situation {
    lines = List.copyOf(lines);
    dangers = List.copyOf(dangers);
    complaints = List.copyOf(complaints);
  }

  static Situation of(Compilation plan, Asked asked) {
    List<Line> lines = Lines.of(plan, asked.start().map(s -> start(plan, s)).orElse(asked.events()));
    House house = plan.house();
    List<Event> events = lines.stream().filter(Line::counts).map(l -> l.event().get()).toList();
    Checked<TrialResult> run = plan.figures().trials().result("", events);
    return new Situation(plan, withImpossible(lines, run.findings()), freeName(house), run.value(), run.value().dangers(),
        run.findings());
  }

  /** The lines that a beginning stands for; none for one that the plan does not know. */
  private static List<String> start(Compilation plan, String start) {
    if (start.equals("stated")) {
      return stated(plan.house());
    }
    Trial trial = start.startsWith("trial ") ? plan.house().trials().get(start.substring(6)) : null;
    return trial == null ? List.of() : trial.events().stream().map(e -> plan.placement().whole(e.span()).text()).toList();
  }

  private static List<String> stated(House house) {
    return house.devices().values().stream().filter(Loads::draws).map(Device::name).map(n -> n + " on").toList();
  }

  /** An event that the trial was worked out without is told at its line. */
  private static List<Line> withImpossible(List<Line> lines, List<Finding> findings) {
    Map<Event, String> impossible = new HashMap<>();
    for (Finding finding : findings) {
      lines.stream().flatMap(l -> l.event().stream())
          .filter(e -> Mistake.TRIAL_IMPOSSIBLE.is(finding) && finding.place().filter(m -> m.span().equals(e.span())).isPresent())
          .forEach(e -> impossible.put(e, finding.headline()));
    }
    List<Line> told = new ArrayList<>();
    lines.forEach(l -> told.add(new Line(l.text(), l.event(), l.event().map(impossible::get).orElse(l.complaint()))));
    return told;
  }

  private static String freeName(House house) {
    String name = USUAL_NAME;
    for (int n = 2; house.trials().containsKey(name); n++) {
      name = USUAL_NAME + "-" + n;
    }
    return name;
  }

  /** The block that stands for all this in the plan; empty where nothing has been clicked. */
  String block() {
    List<String> counting = lines.stream().filter(Line::counts).map(l -> "  " + l.text()).toList();
    return counting.isEmpty() ? "" : "trial " + trial + " {\n" + String.join("\n", counting) + "\n}\n";
  }

  /** The places of lines that say a certain event. */
  List<Integer> at(String key) {
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).key().equals(key)) {
        places.add(i);
      }
    }
    return places;
  }

  /** What stands behind the key in the last such line, its figure; absent where no line has the key. */
  Optional<String> figure(String key) {
    List<Integer> places = at(key);
    if (places.isEmpty()) {
      return Optional.empty();
    }
    String text = lines.get(places.get(places.size() - 1)).text();
    return Optional.of(text.length() > key.length() && text.startsWith(key) ? text.substring(key.length()).strip() : "");
  }
}
