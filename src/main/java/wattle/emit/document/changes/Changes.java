package wattle.emit.document.changes;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import wattle.compare.Comparison;
import wattle.compare.Thing;
import wattle.emit.media.text.VisibleText;
import wattle.words.Caution;

/** Renders comparisons. Added is {@code +}, removed {@code -}, changed {@code ~}, renamed {@code =}. */
public final class Changes {
  static final String AID = Caution.SHORT;

  /** What is said of two revisions of which only the text differs. */
  public static final String NOTHING = "nothing of the house differs";

  private Changes() {}

  /** One line a change, then the figures that differ; empty where nothing does. */
  public static String text(Comparison comparison) {
    return ChangesText.of(comparison);
  }

  /** The changes of a file that is only a part of a plan: what they come to is to be seen in the plan. */
  public static String ofParts(Comparison comparison) {
    return ChangesText.changes(comparison)
        + "A part of a plan: for findings and figures, compare the plan that uses it (wattle compare --git REV PLAN).\n";
  }

  /** A plan that is new or gone as a whole: how much of what, since each thing of it is. */
  public static String inShort(Comparison comparison) {
    String headline = Headline.of(comparison);
    return headline.isEmpty() ? ChangesText.changes(comparison) : headline + "\n";
  }

  /** The same as Markdown. */
  public static String markdown(Comparison comparison, String before, String after) {
    return ChangesMarkdown.of(comparison, before, after);
  }

  /** The same for programs. */
  public static String json(Comparison comparison, String before, String after) {
    return ChangesJson.of(comparison, before, after);
  }

  /** A whole plan, one property a line, for tools that compare texts. */
  public static String description(SortedMap<Thing, Map<String, String>> things) {
    List<String> lines = new ArrayList<>();
    things.forEach((thing, properties) -> {
      lines.add(VisibleText.of(thing.toString()));
      properties.forEach((name, value) -> lines.add(VisibleText.of("  " + name + ": " + value.replace("\n", "\\n"))));
    });
    return String.join("\n", lines) + "\n";
  }
}
