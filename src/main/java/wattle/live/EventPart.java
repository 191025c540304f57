package wattle.live;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.emit.media.page.Markup;
import wattle.finding.Finding;
import wattle.finding.Mistake;
import wattle.model.House;
import wattle.model.Trial;

/** What was clicked together: as lines that can be taken away, and as the block that says the same in a plan. */
final class EventPart {
  /** More trials than this are started from the command line. */
  private static final int MOST_TRIALS = 60;

  /** Complaints of one reason that are told in full. */
  private static final int MOST_ALIKE = 3;

  private final Situation situation;
  private final Markup out = new Markup();

  EventPart(Situation situation) {
    this.situation = situation;
  }

  String html() {
    starts();
    List<Line> lines = situation.lines();
    if (lines.isEmpty()) {
      out.element("p", "Nothing draws and nothing is wrong. Click a breaker or a box, switch loads on, or start with one of the above.");
    } else {
      out.open("ol", "class", "lines");
      for (int i = 0; i < lines.size(); i++) {
        line(i, lines.get(i));
      }
      out.close();
    }
    complaints();
    out.open("form", "id", "typed", "class", "event").element("label", "Another event, in the notation", "for", "typed-line");
    out.empty("input", "id", "typed-line", "name", "line", "size", "34", "autocomplete", "off", "spellcheck", "false", "required",
        "required", "aria-describedby", "typed-words");
    out.element("button", "Add", "type", "submit").element("span", example(), "id", "typed-words", "class", "note").close();
    block();
    return out.toString();
  }

  private String example() {
    return situation.plan().house().boxes().keySet().stream().findFirst().map(b -> "such as fault hot to neutral at " + b)
        .orElse("in the words of a trial");
  }

  private void starts() {
    House house = situation.plan().house();
    out.open("div", "class", "controls", "role", "group", "aria-label", "Begin with");
    start("nothing", "Nothing on");
    start("stated", "Everything on, as stated");
    for (Trial trial : house.trials().values().stream().limit(MOST_TRIALS).toList()) {
      start("trial " + trial.name(), trial.label().orElse(trial.name()));
    }
    out.close();
  }

  private void start(String start, String label) {
    out.element("button", label, "type", "button", "class", "start", "data-start", start);
  }

  private void line(int index, Line line) {
    out.open("li", "class", line.counts() ? "" : "idle").element("code", line.text());
    if (!line.complaint().isEmpty()) {
      out.text(" ").element("span", "does not count: " + line.complaint(), "class", "complaint");
    }
    out.text(" ").element("button", "Take away", "type", "button", "class", "drop", "data-at", String.valueOf(index), "aria-label",
        "Take away " + line.text()).close();
  }

  /** Events that cannot happen are told at their lines; the rest by what is the same of them, once. */
  private void complaints() {
    Map<String, List<Finding>> byReason = new LinkedHashMap<>();
    situation.complaints().stream().filter(f -> !Mistake.TRIAL_IMPOSSIBLE.is(f))
        .forEach(f -> byReason.computeIfAbsent(f.reason(), r -> new ArrayList<>()).add(f));
    byReason.forEach((reason, findings) -> {
      String more = findings.size() > MOST_ALIKE ? "; and " + (findings.size() - MOST_ALIKE) + " more" : "";
      String headlines = String.join("; ", findings.stream().limit(MOST_ALIKE).map(Finding::headline).toList());
      out.element("p", headlines + more + ". " + reason, "class", "complaint");
    });
  }

  private void block() {
    String block = situation.block();
    if (block.isEmpty()) {
      return;
    }
    out.element("h3", "The same in the plan");
    out.element("pre", block, "id", "block", "class", "block", "tabindex", "0", "aria-label", "The trial as text");
    out.open("p").element("button", "Copy this text", "type", "button", "id", "copy").text(" ")
        .element("span", "", "id", "copied", "role", "status").close();
  }
}
