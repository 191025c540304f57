package wattle.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import wattle.emit.media.page.Markup;

/** Writes what can be clicked. A control names the line of the notation that it adds, and where it stands already. */
final class Controls {
  private final Markup out;
  private final Situation situation;

  Controls(Markup out, Situation situation) {
    this.out = out;
    this.situation = situation;
  }

  /** A button that is pressed where a line stands. */
  void toggle(String line, String label) {
    toggle(line, label, List.of());
  }

  private void toggle(String line, String label, List<Integer> instead) {
    List<Integer> at = situation.at(line);
    out.open("button", "type", "button", "class", "toggle", "aria-pressed", String.valueOf(!at.isEmpty()), "data-line", line, "data-at",
        places(at), "data-instead", places(instead));
    out.text(label).close();
  }

  /** Buttons of which one at most is pressed: its line takes the place of that of another. */
  void oneOf(Map<String, String> labelsByLine) {
    List<Integer> all = labelsByLine.keySet().stream().flatMap(l -> situation.at(l).stream()).toList();
    labelsByLine.forEach((line, label) -> toggle(line, label, all));
  }

  /**
   * A field for a figure that an event has.
   *
   * @param key beginning of its line
   * @param before what stands between the key and the figure; the field may be left empty where there is something
   * @param usual what the field proposes
   */
  void figure(String key, String before, String label, String usual) {
    List<Integer> at = situation.at(key);
    String now = situation.figure(key).map(f -> f.startsWith(before) ? f.substring(before.length()).strip() : f).orElse(usual);
    String id = "f-" + key.replaceAll("[^A-Za-z0-9]+", "-").toLowerCase(Locale.ROOT) + "-" + Integer.toHexString(key.hashCode());
    out.open("form", "class", at.isEmpty() ? "event" : "event set", "data-line", key, "data-before", before, "data-at", places(at));
    out.element("label", label, "for", id);
    List<String> field = new ArrayList<>(
        List.of("id", id, "name", "figure", "value", now, "size", "9", "autocomplete", "off", "spellcheck", "false"));
    if (before.isEmpty()) {
      field.addAll(List.of("required", "required"));
    }
    out.empty("input", field.toArray(String[]::new));
    out.element("button", at.isEmpty() ? "Set" : "Change", "type", "submit", "aria-describedby", id);
    if (!at.isEmpty()) {
      out.element("button", "Undo", "type", "button", "class", "drop", "data-at", places(at), "aria-describedby", id);
    }
    out.close();
  }

  private static String places(List<Integer> at) {
    return String.join(",", at.stream().map(String::valueOf).toList());
  }
}
