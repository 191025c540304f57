package wattle.emit.document.permit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import wattle.compiler.Compilation;
import wattle.emit.media.page.Markup;
import wattle.emit.document.findings.Judged;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.model.Dwelling;
import wattle.model.Electrode;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.model.Silence;
import wattle.model.Source;
import wattle.model.Status;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.words.BreakerWords;

/** What somebody who judges a plan asks first: what is there, what is to be made, what was checked and what was silenced. */
public final class PermitFacts {
  private final Compilation plan;
  private final House house;
  private final String heading;

  /** @param heading element of the headings, such as {@code h2} */
  public PermitFacts(Compilation plan, String heading) {
    this.plan = plan;
    this.house = plan.house();
    this.heading = heading;
  }

  /** Dwelling, service, panels and the extent of the work. */
  public void situation(Markup body) {
    Map<Object, List<Dwelling>> alike = new LinkedHashMap<>();
    house.dwellings().values().forEach(d -> alike.computeIfAbsent(List.of(d.facts(), d.flags()), k -> new ArrayList<>()).add(d));
    alike.values().forEach(d -> dwellings(body, d));
    house.services().values().forEach(s -> service(body, s));
    work(body);
  }

  /** Dwellings of which the plan states the same, once. */
  private void dwellings(Markup body, List<Dwelling> alike) {
    Dwelling dwelling = alike.get(0);
    boolean one = alike.size() == 1;
    body.element(heading, one ? "Dwelling" + dwelling.name().map(n -> " " + n).orElse("") : alike.size() + " dwellings alike");
    table(body);
    if (!one) {
      fact(body, "dwellings", alike.stream().map(Dwelling::title).collect(Collectors.joining(", ")));
    }
    new TreeSet<>(dwelling.facts().keySet()).forEach(f -> fact(body, f.replace('-', ' '), dwelling.facts().get(f).toString()));
    new TreeSet<>(dwelling.flags()).forEach(f -> fact(body, f.replace('-', ' '), "yes"));
    body.close();
  }

  private void service(Markup body, Service service) {
    body.element(heading, "Service " + service.label().orElse(service.name()));
    table(body);
    fact(body, "system", service.system().words());
    fact(body, "rating", service.rating().map(Object::toString).orElse("not stated"));
    fact(body, "source", service.source().map(PermitFacts::source).orElse("not stated"));
    service.run().ifPresent(r -> fact(body, "service run", r.length().map(l -> l + " of ").orElse("") + r.wiring().text()));
    service.electrodes().forEach(e -> electrode(body, "electrode: ", e));
    Map<String, List<Panel>> alike = new LinkedHashMap<>();
    house.panels().values().forEach(p -> alike.computeIfAbsent(panel(p), k -> new ArrayList<>()).add(p));
    alike.forEach((words, panels) -> fact(body,
        panels.size() == 1 ? "panel " + panels.get(0).name() : panels.size() + " panels",
        panels.stream().map(Panel::title).collect(Collectors.joining(", ")) + words));
    for (Panel panel : house.panels().values()) {
      panel.electrodes().forEach(e -> electrode(body, "electrode of " + panel.name() + ": ", e));
      double most = plan.figures().faults().panel(panel.name()).mostAmperes();
      if (panel.supply().equals(new PanelSupply.FromService(service.name())) && most > 0) {
        fact(body, "available fault current at " + panel.name(), new Quantity(most, Units.KILOAMPERE).toString());
      }
    }
    fact(body, "status", service.status().word());
    body.close();
  }

  private static void electrode(Markup body, String name, Electrode electrode) {
    fact(body, name + electrode.kind(), electrode.conductor().map(c -> "by " + c.text()).orElse("conductor not stated")
        + electrode.resistance().map(r -> ", " + r).orElse("") + ", " + electrode.status().word());
  }

  private static String panel(Panel panel) {
    return panel.main().map(m -> ", " + BreakerWords.main(m)).orElse("")
        + (panel.bonded() ? ", neutral and ground joined here" : ", neutral and ground apart") + ", " + panel.status().word();
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
  private void work(Markup body) {
    body.element(heading, "Work");
    table(body);
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

  /** What was checked, in words. */
  public void checked(Markup body) {
    body.element(heading, "Checked");
    List<String> checked = new ArrayList<>(List.of("Structure: names, slots, legs, wiring from the panel to each box, neutrals, grounds."));
    plan.library().packs().values().forEach(p -> checked.add("Pack: " + p + "."));
    checked.add("Found: " + plan.count(Severity.ERROR) + " of severity error, " + plan.count(Severity.WARNING) + " of severity warning, "
        + plan.count(Severity.ADVICE) + " of advice. What was not checked is not known.");
    checked.addAll(Judged.of(plan).lines().stream().map(l -> Character.toUpperCase(l.charAt(0)) + l.substring(1) + ".").toList());
    body.list(checked);
  }

  /** The findings that stand, as a table; nothing where there are none. */
  public void standing(Markup body) {
    List<Finding> standing = plan.facts().stream().filter(f -> f.silenced().isEmpty()).toList();
    if (!standing.isEmpty()) {
      table(body);
      body.row("th", "Severity", "Finding", "At", "Source");
      standing.forEach(f -> body.row("td", f.severity().toString(), f.told(), at(f), f.source().map(Citation::toString).orElse("")));
      body.close();
    }
  }

  /** What the plan silences, with its reasons. */
  public void silenced(Markup body) {
    body.element(heading, "Silenced by the plan, with its reason");
    List<Finding> silenced = plan.facts().stream().filter(f -> f.silenced().isPresent()).toList();
    if (silenced.isEmpty() && house.silences().isEmpty()) {
      body.element("p", "Nothing.");
      return;
    }
    table(body);
    body.row("th", "Rule", "Finding", "At", "Reason");
    silenced.forEach(f -> body.row("td", f.rule(), f.told(), at(f), f.silenced().orElseThrow()));
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

  private static void table(Markup body) {
    body.open("table", "class", "facts-table");
  }

  private static void fact(Markup body, String name, String value) {
    String shown = name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    body.open("tr").element("th", shown, "scope", "row", "class", "label").element("td", value).close();
  }
}
