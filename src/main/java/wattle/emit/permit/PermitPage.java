package wattle.emit.permit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;
import wattle.compiler.Compilation;
import wattle.emit.document.Markup;
import wattle.emit.document.Page;
import wattle.emit.schedule.BreakerText;
import wattle.emit.table.Sheet;
import wattle.emit.table.SheetHtml;
import wattle.emit.table.SheetSources;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.model.Dwelling;
import wattle.model.Electrode;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Service;
import wattle.model.Silence;
import wattle.model.Source;
import wattle.model.Status;

/** A plan on a few pages, for somebody who has to judge it. */
public final class PermitPage {
  private static final String STYLE =
      """
      table { font-size: 8pt; margin-bottom: 0.6em; }
      caption { text-align: left; font-weight: bold; padding: 0.2em 0; }
      th.label { width: 30%; }
      @media print { .steps { display: none; } }
      """;

  private final Compilation plan;
  private final House house;
  private final List<Sheet> worksheets;
  private final List<Sheet> panels;
  private final List<String> objections;

  /**
   * @param worksheets load calculations, each as tables
   * @param objections why a load calculation could not be made, in words
   * @param panels schedules of the panels
   */
  public PermitPage(Compilation plan, List<Sheet> worksheets, List<String> objections, List<Sheet> panels) {
    this.plan = plan;
    this.house = plan.house();
    this.worksheets = List.copyOf(worksheets);
    this.objections = List.copyOf(objections);
    this.panels = List.copyOf(panels);
  }

  /** @param paper {@code letter} or {@code A4} */
  public Page page(String paper) {
    String title = "Permit summary: " + house.title().orElse(plan.source().name());
    Markup body = new Markup();
    body.element("h1", title);
    house.revision().ifPresent(r -> body.element("p", "Revision " + r));
    body.element("p", Page.CAUTION, "class", "caution small");
    dwellings(body);
    house.services().values().forEach(s -> service(body, s));
    scope(body);
    findings(body);
    body.element("h2", "Load calculation");
    worksheets.forEach(s -> body.raw(SheetHtml.render(s)));
    objections.forEach(o -> body.element("p", o));
    if (worksheets.isEmpty() && objections.isEmpty()) {
      body.element("p", "The plan names no code that has methods of load calculation.");
    }
    body.element("h2", "Panel schedules");
    panels.forEach(s -> body.raw(SheetHtml.render(s)));
    basis(body);
    return new Page(title, paper, STYLE, body.toString());
  }

  private void dwellings(Markup body) {
    for (Dwelling dwelling : house.dwellings().values()) {
      body.element("h2", "Dwelling" + dwelling.name().map(n -> " " + n).orElse(""));
      body.open("table");
      new TreeSet<>(dwelling.facts().keySet()).forEach(f -> fact(body, f.replace('-', ' '), dwelling.facts().get(f).toString()));
      new TreeSet<>(dwelling.flags()).forEach(f -> fact(body, f.replace('-', ' '), "yes"));
      body.close();
    }
  }

  private void service(Markup body, Service service) {
    body.element("h2", "Service " + service.label().orElse(service.name()));
    body.open("table");
    fact(body, "system", service.system().text());
    fact(body, "rating", service.rating().map(Object::toString).orElse("not stated"));
    fact(body, "source", service.source().map(PermitPage::source).orElse("not stated"));
    service.run().ifPresent(r -> fact(body, "service run", r.length().map(l -> l + " of ").orElse("") + r.wiring().text()));
    for (Electrode electrode : service.electrodes()) {
      fact(body, "electrode: " + electrode.kind(), electrode.conductor().map(c -> "by " + c.text()).orElse("conductor not stated") + electrode.resistance().map(r -> ", " + r).orElse("") + ", " + electrode.status().word());
    }
    for (Panel panel : house.panels().values()) {
      fact(body, "panel " + panel.name(), panel.title() + panel.main().map(m -> ", " + BreakerText.main(m)).orElse("") + (panel.bonded() ? ", neutral and ground joined here" : ", neutral and ground apart") + ", " + panel.status().word());
    }
    fact(body, "status", service.status().word());
    body.close();
  }

  private static String source(Source source) {
    if (source instanceof Source.Transformer t) {
      return "transformer " + t.rating() + ", " + t.impedance();
    }
    if (source instanceof Source.Available a) {
      return "available fault current " + a.faultCurrent();
    }
    if (source instanceof Source.Generator g) {
      return "generator " + g.rating();
    }
    throw new AssertionError(source);
  }

  /** What is to be made, since a permit is for that. */
  private void scope(Markup body) {
    body.element("h2", "Work");
    body.open("table");
    for (Status status : Status.values()) {
      long branches = house.branches().values().stream().filter(b -> b.status() == status).count();
      long boxes = house.boxes().values().stream().filter(b -> b.status() == status).count();
      long devices = house.devices().values().stream().filter(d -> d.status() == status).count();
      if (branches + boxes + devices > 0) {
        fact(body, status.word(), branches + " branches, " + boxes + " boxes, " + devices + " devices");
      }
    }
    body.close();
  }

  private void findings(Markup body) {
    body.element("h2", "Checked");
    List<String> checked = new ArrayList<>(List.of("Structure: names, slots, legs, wiring from the panel to each box, neutrals, grounds."));
    plan.library().packs().values().forEach(p -> checked.add("Pack: " + p + "."));
    checked.add("Found: " + plan.count(Severity.ERROR) + " of severity error, " + plan.count(Severity.WARNING) + " of severity warning, " + plan.count(Severity.ADVICE) + " of advice. What was not checked is not known.");
    body.list(checked);
    List<Finding> standing = plan.findings().stream().filter(f -> f.silenced().isEmpty()).toList();
    if (!standing.isEmpty()) {
      body.open("table").row("th", "Severity", "Finding", "At", "Source");
      standing.forEach(f -> body.row("td", f.severity().toString(), f.headline(), at(f), f.source().map(Citation::toString).orElse("")));
      body.close();
    }
    body.element("h2", "Silenced by the plan, with its reason");
    List<Finding> silenced = plan.findings().stream().filter(f -> f.silenced().isPresent()).toList();
    if (silenced.isEmpty() && house.silences().isEmpty()) {
      body.element("p", "Nothing.");
      return;
    }
    body.open("table").row("th", "Rule", "Finding", "At", "Reason");
    silenced.forEach(f -> body.row("td", f.rule(), f.headline(), at(f), f.silenced().orElseThrow()));
    for (Silence silence : house.silences()) {
      if (silenced.stream().noneMatch(f -> f.rule().equals(silence.rule()))) {
        body.row("td", silence.rule(), "nothing of this rule was found", silence.at().orElse("everywhere"), silence.reason());
      }
    }
    body.close();
  }

  private static String at(Finding finding) {
    return finding.place().map(p -> p.span().toString()).orElse("");
  }

  private void basis(Markup body) {
    if (!house.assumed().isEmpty()) {
      body.element("h2", "Not said by the plan, and taken as usual").list(house.assumed());
    }
    List<Sheet> all = new ArrayList<>(worksheets);
    all.addAll(panels);
    SortedSet<String> sources = new TreeSet<>(SheetSources.of(all));
    plan.findings().forEach(f -> f.source().map(Citation::toString).ifPresent(sources::add));
    if (!sources.isEmpty()) {
      body.element("h2", "Sources").list(List.copyOf(sources));
    }
  }

  private static void fact(Markup body, String name, String value) {
    String shown = name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    body.open("tr").element("th", shown, "scope", "row", "class", "label").element("td", value).close();
  }
}
