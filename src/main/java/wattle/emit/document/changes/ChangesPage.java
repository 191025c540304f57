package wattle.emit.document.changes;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.compare.Alike;
import wattle.compare.Comparison;
import wattle.compare.Measure;
import wattle.compare.Thing;
import wattle.compiler.Compilation;
import wattle.emit.document.glance.AtAGlance;
import wattle.emit.document.report.PrintedPicture;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.drawing.View;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.emit.media.paper.PagePicture;
import wattle.emit.media.picture.Paper;
import wattle.emit.view.oneline.OneLine;
import wattle.emit.view.oneline.OneLineDifference;
import wattle.emit.view.oneline.OneLineView;
import wattle.finding.Finding;
import wattle.model.House;

/**
 * A comparison as a page: both plans at a glance, what changed and what it comes to, and the one-line diagrams of both in one picture, of
 * the earlier plan and of the later one.
 */
public final class ChangesPage {
  private static final String STYLE = """
      table { font-size: 9pt; margin-bottom: 0.6em; }
      caption { text-align: left; font-weight: bold; padding: 0.2em 0; }
      .caption { font-size: 9pt; }
      th.label { width: 18%; }
      .pair td { width: 41%; }
      .headline { font-size: 12pt; margin: 0.5em 0; }
      .sign { font-family: monospace; font-weight: bold; }
      td.figure { white-space: nowrap; }
      @page turned { size: PAPER landscape; margin: 13mm; }
      .turned { page: turned; page-break-before: always; }
      """;

  private static final String FITTED = ".picture { page-break-inside: avoid; padding-top: 9pt; }\n"
      + ".picture svg { display: block; max-width: 100%; }\n";

  private static final String SCROLLED = ".picture { overflow-x: auto; }\n";

  /** A drawing of more panels is larger than any page. */
  private static final int MOST_PANELS = 60;

  private final Compilation before;
  private final Compilation after;
  private final Comparison comparison;
  private final Markup body = new Markup();

  private ChangesPage(Compilation before, Compilation after, Comparison comparison) {
    this.before = before;
    this.after = after;
    this.comparison = comparison;
  }

  /**
   * @param beforeName what the earlier plan is called, such as its file
   * @param paper {@code letter} or {@code A4}
   * @param printed whether the page is for paper, where nothing scrolls
   */
  public static Page of(
      Compilation before, Compilation after, Comparison comparison, String beforeName, String afterName, String paper, boolean printed) {
    ChangesPage page = new ChangesPage(before, after, comparison.shownIn(after.house().units()));
    String title = "What changed: " + after.house().title().or(before.house()::title).orElse(afterName);
    page.write(title, beforeName, afterName, printed ? Paper.named(paper) : Optional.empty());
    return new Page(title, paper, STYLE.replace("PAPER", paper) + (printed ? FITTED : SCROLLED), page.body.toString());
  }

  private void write(String title, String beforeName, String afterName, Optional<Paper> paper) {
    body.element("h1", title);
    body.element("p", named(before.house(), beforeName) + " → " + named(after.house(), afterName));
    body.element("p", Page.CAUTION, "class", "caution small");
    body.element("h2", "At a glance");
    String headline = Headline.of(comparison);
    body.element("p",
        comparison.isEmpty() ? "Nothing of the house differs." : headline.isEmpty() ? "A few changes, listed below." : headline,
        "class", "headline");
    glance();
    findings();
    changes();
    for (Measure.Topic topic : Measure.Topic.values()) {
      figures(topic);
    }
    if (!comparison.consequences().gaps().isEmpty()) {
      body.element("h2", "Not compared");
      body.list(comparison.consequences().gaps().stream().map(g -> (g.later() ? "after: " : "before: ") + g.what() + ": " + g.why())
          .toList());
    }
    pictures(paper);
  }

  private static String named(House house, String name) {
    return name + house.revision().map(r -> " (revision " + r + ")").orElse("");
  }

  /** What each plan is, side by side. */
  private void glance() {
    Map<String, List<String>> was = entries(before);
    Map<String, List<String>> is = entries(after);
    loads(was, is);
    Set<String> names = new LinkedHashSet<>(is.keySet());
    names.addAll(was.keySet());
    body.open("table", "class", "facts-table glance pair");
    body.row("th", "", "Before", "After");
    for (String name : names) {
      body.open("tr").element("th", name, "scope", "row", "class", "label");
      for (Map<String, List<String>> side : List.of(was, is)) {
        body.open("td");
        side.getOrDefault(name, List.of("none")).forEach(line -> body.element("div", line));
        body.close();
      }
      body.close();
    }
    body.close();
  }

  /** The load of both by one method, as the figures below have it: by two methods they could not be held against each other. */
  private void loads(Map<String, List<String>> was, Map<String, List<String>> is) {
    List<FigureWords> rows = FigureWords.rows(Measure.Topic.LOAD, comparison.consequences().figures()).shown();
    if (!rows.isEmpty()) {
      was.put(AtAGlance.LOAD, rows.stream().map(r -> r.what() + " " + r.before()).toList());
      is.put(AtAGlance.LOAD, rows.stream().map(r -> r.what() + " " + r.after() + " " + r.note()).toList());
    }
  }

  private static Map<String, List<String>> entries(Compilation plan) {
    Map<String, List<String>> entries = new LinkedHashMap<>();
    AtAGlance.of(plan).forEach(e -> entries.put(e.name(), e.lines()));
    return entries;
  }

  private void findings() {
    if (comparison.appeared().isEmpty() && comparison.gone().isEmpty()) {
      return;
    }
    body.element("h2", "Findings");
    list("New", comparison.appeared());
    list("Cured", comparison.gone());
  }

  private void list(String heading, List<Finding> findings) {
    if (!findings.isEmpty()) {
      Map<String, Integer> times = new LinkedHashMap<>();
      findings.forEach(f -> times.merge(f.weight() + ": " + f.told(), 1, Integer::sum));
      body.element("h3", heading);
      body.list(times.entrySet().stream().map(e -> e.getKey() + (e.getValue() > 1 ? " at " + e.getValue() + " places" : "")).toList());
    }
  }

  private void changes() {
    if (comparison.changes().isEmpty()) {
      return;
    }
    body.element("h2", "Changes");
    Optional<Thing.Kind> kind = Optional.empty();
    for (Alike alike : comparison.alike()) {
      Thing.Kind its = alike.first().thing().kind();
      if (!kind.equals(Optional.of(its))) {
        kind.ifPresent(k -> body.close());
        kind = Optional.of(its);
        body.element("h3", its.word().substring(0, 1).toUpperCase(java.util.Locale.ROOT) + its.word().substring(1)).open("ul");
      }
      body.open("li").element("span", (ChangeWords.isReplaced(alike.first()) ? "replaced" : ChangeWords.verb(alike.first())) + ":")
          .text(" " + ChangeWords.sentence(alike)).close();
    }
    body.close();
  }

  private void figures(Measure.Topic topic) {
    FigureWords.Rows rows = FigureWords.rows(topic, comparison.consequences().figures());
    if (rows.shown().isEmpty()) {
      return;
    }
    String words = topic.words();
    body.element("h2", words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1));
    body.open("table").row("th", "", "Before", "After", "Difference", "");
    for (FigureWords row : rows.shown()) {
      body.open("tr").element("td", row.what());
      for (String figure : List.of(row.before(), row.after(), row.difference())) {
        body.element("td", figure, "class", "figure");
      }
      body.element("td", row.note()).close();
    }
    body.close();
    if (rows.more() > 0) {
      body.element("p", "And " + rows.more() + " that differ less; compare --format json has all of them.", "class", "small");
    }
  }

  /** @param drawing for a screen */
  private record Shown(String heading, Drawing drawing, View view) {}

  /** @param paper on which it is printed; absent for a screen */
  private void pictures(Optional<Paper> paper) {
    String heading = "One-line diagrams";
    if (Math.max(before.house().panels().size(), after.house().panels().size()) > MOST_PANELS) {
      body.element("h2", heading);
      body.element("p", "Not drawn here: a picture of so many panels does not fit a page. wattle compare --picture draws it.");
      return;
    }
    List<Shown> all = new ArrayList<>();
    OneLineDifference both = new OneLineDifference(before.figures(), after.figures(), comparison);
    all.add(new Shown("Both in one", both.drawing(), both));
    one("Before", before).ifPresent(all::add);
    one("After", after).ifPresent(all::add);
    for (int i = 0; i < all.size(); i++) {
      Shown shown = all.get(i);
      String id = "picture" + (i + 1);
      Optional<PagePicture> printed = paper.map(p -> PagePicture.of(shown.view, shown.view.legend(), p));
      body.open("div", "class", printed.isPresent() && printed.get().turned() ? "turned" : "");
      // Headings stay with the first part, on a turned page too.
      body.open("div", "class", printed.isPresent() ? "together" : "");
      if (i == 0) {
        body.element("h2", heading);
      }
      body.element("h3", shown.heading);
      if (printed.isPresent()) {
        List<Drawing> parts = printed.get().parts();
        body.raw(PrintedPicture.figure(parts.get(0), id + "-1")).close();
        for (int part = 1; part < parts.size(); part++) {
          body.raw(PrintedPicture.figure(parts.get(part), id + "-" + (part + 1)));
        }
      } else {
        body.close();
        body.open("div", "class", "picture", "role", "group", "tabindex", "0", "aria-label", shown.heading)
            .raw(DrawingSvg.element(shown.drawing, id)).close();
      }
      body.close();
    }
  }

  private static Optional<Shown> one(String heading, Compilation plan) {
    if (plan.house().panels().isEmpty()) {
      return Optional.empty();
    }
    OneLineView view = new OneLine(plan.house(), plan.figures()).view();
    return Optional.of(new Shown(heading, view.drawing(), view));
  }
}
