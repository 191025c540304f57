package wattle.emit.document.glance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.compiler.Compilation;
import wattle.derivation.Derivation;
import wattle.emit.document.findings.Judged;
import wattle.emit.media.page.Markup;
import wattle.faults.Fault;
import wattle.faults.FaultPoint;
import wattle.figures.HouseFigures;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.loads.LoadFigures;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.trials.WorstCases.NeutralCase;
import wattle.trials.WorstCases.VoltageCase;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.Worksheet;

/**
 * A plan at a glance: findings by severity and the worst of them, the calculated load against the service, the legs, the greatest
 * voltage drop, the greatest and the least fault current, the shared neutrals, and what was not checked. It picks from figures that the
 * rest of a document shows; where one of them is not known it says so.
 */
public final class AtAGlance {
  /** Name of the row of calculated loads. */
  public static final String LOAD = "Calculated load";

  private static final int WORST = 3;
  private static final int MOST_NEUTRALS = 6;

  private final Compilation plan;
  private final House house;
  private final HouseFigures figures;

  /**
   * One row.
   *
   * @param name what it is about
   * @param lines at least one
   */
  public record Entry(String name, List<String> lines) {
    public Entry {
      lines = List.copyOf(lines);
    }
  }

  private AtAGlance(Compilation plan) {
    this.plan = plan;
    house = plan.house();
    figures = plan.figures();
  }

  /** The rows, in order; what the plan has nothing of is left out. */
  public static List<Entry> of(Compilation plan) {
    AtAGlance glance = new AtAGlance(plan);
    return Stream.of(
        new Entry("Findings", glance.findings()), new Entry(LOAD, glance.loads()), new Entry("Legs", glance.legs()),
        new Entry("Voltage drop", glance.drop()), new Entry("Available fault current", glance.faults()),
        new Entry("Shared neutrals", glance.neutrals()), new Entry("Checked", Judged.of(plan).lines()))
        .filter(e -> !e.lines().isEmpty())
        .toList();
  }

  /** The rows as a table of a page. */
  public static String markup(Compilation plan) {
    Markup body = new Markup();
    body.open("table", "class", "facts-table glance");
    for (Entry entry : of(plan)) {
      body.open("tr").element("th", entry.name(), "scope", "row", "class", "label").open("td");
      entry.lines().forEach(line -> body.element("div", line));
      body.close().close();
    }
    return body.close().toString();
  }

  private List<String> findings() {
    List<String> lines = new ArrayList<>();
    lines.add(
        count(plan.count(Severity.ERROR), "error", "errors") + ", " + count(plan.count(Severity.WARNING), "warning", "warnings") + ", "
            + plan.count(Severity.ADVICE) + " advice");
    plan.facts().stream()
        .filter(f -> f.silenced().isEmpty())
        .sorted(Comparator.comparing(Finding::severity))
        .limit(WORST)
        .map(f -> f.severity() + ": " + f.told())
        .forEach(lines::add);
    return lines;
  }

  private static String count(long number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }

  private List<String> loads() {
    List<String> lines = new ArrayList<>();
    for (HouseInputs.Read read : figures.worksheets().services()) {
      Optional<Worksheet> sheet = figures.worksheets().deciding(read).flatMap(m -> figures.worksheets().calculate(m, read).worksheet());
      lines.add(sheet.map(AtAGlance::load).orElse("service " + read.inputs().name() + ": not calculated; see the load worksheets"));
    }
    return lines;
  }

  private static String load(Worksheet sheet) {
    String rating = sheet.rating().map(r -> " of " + amperes(r)).orElse("");
    String spare = sheet.spare().filter(s -> s.si() < 0).map(s -> ": more than the service is rated for").orElse("");
    return "service " + sheet.name() + ": " + amperes(sheet.sized()) + rating + spare + " ("
        + Math.round(sheet.total().si()) + (sheet.method().mechanism().countsWatts() ? " W" : " VA") + ", " + sheet.method().title() + ", "
        + sheet.method().source() + ")";
  }

  private List<String> legs() {
    LoadFigures loads = new LoadFigures(house, figures.loads());
    List<String> lines = new ArrayList<>();
    for (Panel panel : atServices()) {
      List<Derivation> loaded = panel.legs().stream().map(l -> loads.panel(panel, Optional.of(l))).toList();
      List<String> each = new ArrayList<>();
      for (int i = 0; i < loaded.size(); i++) {
        each.add(panel.legs().get(i) + " " + Math.round(loaded.get(i).si()) + " VA");
      }
      String imbalance = loaded.size() > 1
          ? "; imbalance " + Quantity.plain(loads.imbalance(panel, loaded).quantity().orElseThrow().in(Units.PERCENT), 2) + " %"
          : "";
      lines.add("panel " + panel.name() + ", everything connected: " + String.join(", ", each) + imbalance);
    }
    return lines;
  }

  private List<Panel> atServices() {
    return house.panels().values().stream().filter(p -> p.supply() instanceof PanelSupply.FromService).toList();
  }

  /** The greatest with stated loads, and at the full rating of a breaker. */
  private List<String> drop() {
    List<VoltageCase> cases = figures.worst().voltages();
    List<String> lines = new ArrayList<>();
    cases.stream().max(Comparator.comparingDouble(c -> c.statedFall().si())).filter(c -> c.statedFall().si() > 0)
        .ifPresent(c -> lines.add(percent(c.statedFall()) + " at " + c.outlet() + " on " + c.branch() + ", every stated load on"));
    cases.stream().filter(c -> c.fall().isPresent()).max(Comparator.comparingDouble(c -> c.fall().get().si()))
        .ifPresent(c -> lines.add(
            percent(c.fall().get()) + " at " + c.outlet() + " on " + c.branch() + ", with the full rating of its breaker drawn there"));
    return lines;
  }

  private record At(String place, double amperes) {}

  /** The most at each service panel, against what its main interrupts; the least anywhere. */
  private List<String> faults() {
    List<String> lines = new ArrayList<>();
    for (Panel panel : atServices()) {
      double most = figures.faults().panel(panel.name()).mostAmperes();
      if (most > 0) {
        lines.add(
            "at most " + kiloamperes(most) + " at panel " + panel.name() + "; its main " + panel.main().flatMap(MainDevice::interrupting)
                .map(i -> "interrupts " + i).orElse("states no interrupting rating"));
      }
    }
    house.branches().values().stream().flatMap(b -> figures.faults().branch(b.name()).stream().skip(1).flatMap(p -> least(p, b.name())))
        .min(Comparator.comparingDouble(At::amperes))
        .ifPresent(l -> lines.add("at least " + Math.round(l.amperes()) + " A, at " + l.place()));
    return lines;
  }

  private static Stream<At> least(FaultPoint point, String branch) {
    return point.faults().stream().map(Fault::leastAmperes).map(a -> new At(point.place() + " on " + branch, a));
  }

  private List<String> neutrals() {
    List<NeutralCase> cases = figures.worst().neutrals().stream()
        .filter(c -> house.sharesNeutralBetweenLoads(house.branches().get(c.branch())))
        .toList();
    List<String> lines = new ArrayList<>();
    cases.stream().limit(MOST_NEUTRALS)
        .map(c -> c.branch() + " on legs " + String.join(" and ", c.legs()) + ": at most " + amperes(c.worst()) + ", "
            + amperes(c.stated()) + " with every stated load on")
        .forEach(lines::add);
    if (cases.size() > MOST_NEUTRALS) {
      lines.add(cases.size() - MOST_NEUTRALS + " more; see the shared neutrals");
    }
    return lines;
  }

  private static String amperes(Derivation figure) {
    return Quantity.plain(figure.si(), figure.si() < 10 ? 2 : 3) + " A";
  }

  private static String kiloamperes(double amperes) {
    return Quantity.plain(amperes / 1000, 3) + " kA";
  }

  private static String percent(Derivation share) {
    return Quantity.plain(share.quantity().orElseThrow().in(Units.PERCENT), 2) + " %";
  }
}
