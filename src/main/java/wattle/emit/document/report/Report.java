package wattle.emit.document.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import wattle.compiler.Compilation;
import wattle.emit.media.page.Markup;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetSources;
import wattle.emit.sheet.schedule.Alike;
import wattle.finding.Citation;
import wattle.model.House;

/**
 * All that is known of a plan in one document: findings beside the text of the plan, pictures, tables, what was assumed
 * and where each figure is from; as a page for the screen, where figures unfold, and as one for paper, where the workings
 * stand at the end. Long tables are cut and say so, so that a plan of ten thousand lines still makes a page that opens.
 */
public final class Report {
  private final Compilation plan;
  private final List<Part> parts;
  private final Alike alike;

  /** @param parts in order; findings go behind the first of them, sources and the text of the plan behind them all */
  public Report(Compilation plan, List<Part> parts) {
    this.plan = plan;
    this.parts = List.copyOf(parts);
    this.alike = new Alike(plan.house());
  }

  /** With all its parts. */
  public static Report of(Compilation plan) {
    return new Report(plan, ReportParts.of(plan));
  }

  /** Name of the plan and its revision. */
  public String title() {
    House house = plan.house();
    return house.title().orElse(plan.source().name()) + house.revision().map(r -> ", revision " + r).orElse("");
  }

  /** The whole page for the screen, with the mark of our files. */
  public String html() {
    return new ScreenPage(this).html();
  }

  /**
   * The same for paper, as a page that a PDF is made of.
   *
   * @param edition how much of it
   */
  public String paper(PaperEdition edition) {
    return new PaperPage(this, edition).html();
  }

  Compilation plan() {
    return plan;
  }

  /** What is shown once for all that are like it. */
  Alike alike() {
    return alike;
  }

  List<Part> parts() {
    return parts;
  }

  /** What a reader sees first: the plan at a glance, then its one-line diagram. */
  List<Part> first() {
    return parts.stream().filter(p -> p.group() == Part.Group.FIRST).toList();
  }

  /** What follows the findings. */
  List<Part> rest() {
    return parts.stream().filter(p -> p.group() != Part.Group.FIRST).toList();
  }

  /** How much there is, and what it was checked under. */
  String facts() {
    House house = plan.house();
    String codes = house.codes().isEmpty() ? "no code pack" : String.join(", ", house.codes().stream().map(this::packTitle).toList());
    return count(house.panels().size(), "panel", "panels") + ", " + count(house.branches().size(), "branch", "branches") + ", "
        + count(house.rooms().size(), "room", "rooms") + ", " + count(house.boxes().size(), "box", "boxes") + ". Checked under: " + codes
        + ".";
  }

  private static String count(int number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }

  private String packTitle(String pack) {
    return plan.library().packs().getOrDefault(pack, pack);
  }

  /**
   * What stands behind the rest: assumptions and sources.
   *
   * @param sourcesWriter writes a list of them: one a line on a screen, close together on paper
   */
  String basis(BiConsumer<Markup, List<String>> sourcesWriter) {
    Markup page = new Markup();
    if (!plan.house().assumed().isEmpty()) {
      page.element("h3", "Assumed: not stated in the plan").list(alike.shown(plan.house().assumed()));
    }
    List<Sheet> sheets = new ArrayList<>();
    parts.forEach(
        p -> p.contents().stream().filter(Content.Table.class::isInstance).map(c -> ((Content.Table) c).sheet()).forEach(sheets::add));
    SortedSet<Citation> sources = new TreeSet<>(Comparator.comparing(Citation::toString));
    sources.addAll(SheetSources.of(sheets));
    plan.findings().forEach(f -> f.source().ifPresent(sources::add));
    List<String> sure = sources.stream().filter(c -> !c.verify()).map(Citation::toString).toList();
    List<String> unsure = sources.stream().filter(Citation::verify).map(Citation::toString).toList();
    if (!sure.isEmpty()) {
      page.element("h3", "Sources of the figures and findings on this page");
      sourcesWriter.accept(page, sure);
    }
    if (!unsure.isEmpty()) {
      page.element("h3", "Sources cited from memory");
      page.element("p", "Verify each of them before you use a figure that cites it.");
      sourcesWriter.accept(page, unsure);
    }
    if (sources.isEmpty() && plan.house().assumed().isEmpty()) {
      page.element("p", "Every figure is from the plan itself; no table was used.");
    }
    return page.toString();
  }

  /** What a page for the screen looks like; other pages of ours wear it too. */
  public static String style() {
    return resource("report.css");
  }

  static String resource(String name) {
    try (InputStream in = Report.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException(name + " is missing from this build");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + name, e);
    }
  }
}
