package wattle.emit.document.permit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import wattle.compiler.Compilation;
import wattle.emit.document.findings.Judged;
import wattle.emit.document.permit.PermitPart.Facts.Fact;
import wattle.emit.media.page.Markup;
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
import wattle.words.BondWords;
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
    situation().forEach(p -> toPage(p, body));
  }

  /** What was checked, in words. */
  public void checked(Markup body) {
    toPage(checked(), body);
  }

  /** The findings that stand, as a table; nothing where there are none. */
  public void standing(Markup body) {
    standing().ifPresent(p -> toPage(p, body));
  }

  /** What the plan silences, with its reasons. */
  public void silenced(Markup body) {
    toPage(silenced(), body);
  }

  private void toPage(PermitPart part, Markup body) {
    part.title().ifPresent(t -> body.element(heading, t));
    part.toPage(body);
  }

  /** All of them, in their order. */
  List<PermitPart> all() {
    List<PermitPart> all = new ArrayList<>(situation());
    all.add(checked());
    standing().ifPresent(all::add);
    all.add(silenced());
    return all;
  }

  private List<PermitPart> situation() {
    List<PermitPart> parts = new ArrayList<>();
    Map<Object, List<Dwelling>> alike = new LinkedHashMap<>();
    house.dwellings().values().forEach(d -> alike.computeIfAbsent(List.of(d.facts(), d.flags()), k -> new ArrayList<>()).add(d));
    alike.values().forEach(d -> parts.add(dwellings(d)));
    house.services().values().forEach(s -> parts.add(service(s)));
    parts.add(work());
    return parts;
  }

  /** Dwellings of which the plan states the same, once. */
  private static PermitPart dwellings(List<Dwelling> alike) {
    Dwelling dwelling = alike.get(0);
    boolean one = alike.size() == 1;
    List<Fact> facts = new ArrayList<>();
    if (!one) {
      facts.add(new Fact("dwellings", alike.stream().map(Dwelling::title).collect(Collectors.joining(", "))));
    }
    new TreeSet<>(dwelling.facts().keySet()).forEach(f -> facts.add(new Fact(label(f), dwelling.facts().get(f).toString())));
    new TreeSet<>(dwelling.flags()).forEach(f -> facts.add(new Fact(label(f), "yes")));
    return new PermitPart.Facts(
        Optional.of(one ? "Dwelling" + dwelling.name().map(n -> " " + n).orElse("") : alike.size() + " identical dwellings"), facts);
  }

  private PermitPart service(Service service) {
    List<Fact> facts = new ArrayList<>();
    facts.add(new Fact("system", service.system().words()));
    facts.add(new Fact("rating", service.rating().map(Object::toString).orElse("not stated")));
    facts.add(new Fact("source", service.source().map(PermitFacts::source).orElse("not stated")));
    service.run().ifPresent(r -> facts.add(new Fact("service run", r.length().map(l -> l + " of ").orElse("") + r.wiring().text())));
    service.electrodes().forEach(e -> facts.add(electrode("electrode: ", e)));
    Map<String, List<Panel>> alike = new LinkedHashMap<>();
    house.panels().values().forEach(p -> alike.computeIfAbsent(panel(p), k -> new ArrayList<>()).add(p));
    alike.forEach(
        (words, panels) -> facts.add(
            new Fact(
                panels.size() == 1 ? "panel " + panels.get(0).name() : panels.size() + " panels",
                panels.stream().map(Panel::title).collect(Collectors.joining(", ")) + words)));
    for (Panel panel : house.panels().values()) {
      panel.electrodes().forEach(e -> facts.add(electrode("electrode of " + panel.name() + ": ", e)));
      double most = plan.figures().faults().panel(panel.name()).mostAmperes();
      if (panel.supply().equals(new PanelSupply.FromService(service.name())) && most > 0) {
        facts.add(new Fact("available fault current at " + panel.name(), new Quantity(most, Units.KILOAMPERE).toString()));
      }
    }
    facts.add(new Fact("status", service.status().word()));
    return new PermitPart.Facts(Optional.of("Service " + service.label().orElse(service.name())), facts);
  }

  private static Fact electrode(String name, Electrode electrode) {
    return new Fact(
        name + electrode.kind(), electrode.conductor().map(c -> "by " + c.text()).orElse("conductor not stated")
            + electrode.resistance().map(r -> ", " + r).orElse("") + ", " + electrode.status().word());
  }

  private static String panel(Panel panel) {
    return panel.main().map(m -> ", " + BreakerWords.main(m)).orElse("")
        + ", " + BondWords.of(panel) + (Boolean.TRUE.equals(panel.flags().get("meters")) ? ", with the meters of what it feeds" : "") + ", "
        + panel.status().word();
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
  private PermitPart work() {
    List<Fact> facts = new ArrayList<>();
    for (Status status : Status.values()) {
      long branches = house.branches().values().stream().filter(b -> b.status() == status).count();
      long boxes = house.boxes().values().stream().filter(b -> b.status() == status).count();
      long devices = house.devices().values().stream().filter(d -> d.status() == status).count();
      if (branches + boxes + devices > 0) {
        facts.add(new Fact(status.word(), branches + " branches, " + boxes + " boxes, " + devices + " devices"));
      }
    }
    return new PermitPart.Facts(Optional.of("Work"), facts);
  }

  /** A fact as people write it: the notation has the British word for stories. */
  private static String label(String fact) {
    return fact.equals("storeys") ? "stories" : fact.replace('-', ' ');
  }

  private String counted(Severity severity, String one, String several) {
    long count = plan.count(severity);
    return count + " " + (count == 1 ? one : several);
  }

  private PermitPart checked() {
    List<String> checked = new ArrayList<>(List.of("Structure: names, slots, legs, wiring from the panel to each box, neutrals, grounds."));
    plan.library().packs().values().forEach(p -> checked.add("Pack: " + p + "."));
    checked.add("Found: " + counted(Severity.ERROR, "error", "errors") + ", " + counted(Severity.WARNING, "warning", "warnings")
        + ", " + plan.count(Severity.ADVICE) + " advice. Nothing is known about the parts that were not checked.");
    checked.addAll(Judged.of(plan).lines().stream().map(l -> Character.toUpperCase(l.charAt(0)) + l.substring(1) + ".").toList());
    return new PermitPart.Items(Optional.of("Checked"), checked);
  }

  private Optional<PermitPart> standing() {
    List<List<String>> rows = plan.facts().stream()
        .filter(f -> f.silenced().isEmpty())
        .map(f -> List.of(f.severity().toString(), f.told(), at(f), f.source().map(Citation::toString).orElse("")))
        .toList();
    return rows.isEmpty()
        ? Optional.empty()
        : Optional.of(new PermitPart.Grid(Optional.empty(), List.of("Severity", "Finding", "At", "Source"), rows));
  }

  private PermitPart silenced() {
    Optional<String> title = Optional.of("Silenced by the plan, with its reason");
    List<Finding> silenced = plan.facts().stream().filter(f -> f.silenced().isPresent()).toList();
    if (silenced.isEmpty() && house.silences().isEmpty()) {
      return new PermitPart.Items(title, List.of("Nothing."));
    }
    List<List<String>> rows = new ArrayList<>();
    silenced.forEach(f -> rows.add(List.of(f.rule(), f.told(), at(f), f.silenced().orElseThrow())));
    for (Silence silence : house.silences()) {
      if (silenced.stream().noneMatch(f -> f.rule().equals(silence.rule()))) {
        rows.add(List.of(silence.rule(), "nothing of this rule was found", silence.at().orElse("everywhere"), silence.reason()));
      }
    }
    return new PermitPart.Grid(title, List.of("Rule", "Finding", "At", "Reason"), rows);
  }

  private static String at(Finding finding) {
    return finding.place().map(p -> p.span().toString()).orElse("");
  }
}
