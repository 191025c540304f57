package wattle.emit.document.acceptance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import wattle.acceptance.Measurement;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.model.Branch;
import wattle.model.House;

/** The measurements as pages with room for readings, branch by branch. */
public final class TestPage {
  private static final String STYLE = """
      .read { width: 16%; }
      td { height: 2em; }
      table { font-size: 9pt; -fs-table-paginate: paginate; -fs-page-break-min-height: 60pt; }
      """;

  private TestPage() {}

  /** @param paper {@code letter} or {@code A4} */
  public static Page of(House house, List<Measurement> measurements, String paper) {
    Markup body = new Markup();
    body.element("h1", "Measurements after the work");
    body.element("p", house.title().orElse("plan") + house.revision().map(r -> ", revision " + r).orElse(""));
    body.element("p", Page.CAUTION, "class", "caution small");
    body.element("p",
        "Continuity, bonds, insulation and torque dead: open, lock and prove dead first. Voltage, rotation, polarity and trips live, "
            + "by a qualified person. By:"
            + " ______________ Date: ____________ Instrument, number: ______________");
    Map<String, List<Measurement>> groups = new LinkedHashMap<>();
    measurements.forEach(m -> groups.computeIfAbsent(m.branch(), b -> new ArrayList<>()).add(m));
    for (List<Measurement> here : groups.values()) {
      body.element("h2", head(house, here.get(0)));
      body.open("table").row("th", "Measure", "At", "Between", "Expected", "Accepted", "Reading");
      for (Measurement m : here) {
        body.open("tr").element("td", m.kind().word()).element("td", m.at()).element("td", m.between()).element("td", m.expected());
        body.element("td", accepted(m)).element("td", m.unit().isEmpty() ? "" : "        " + m.unit(), "class", "read figure").close();
      }
      body.close();
    }
    return new Page("Measurements after the work", paper, STYLE, body.toString());
  }

  private static String head(House house, Measurement first) {
    Branch branch = house.branches().get(first.branch());
    return branch == null
        ? first.subject().substring(0, 1).toUpperCase(Locale.ROOT) + first.subject().substring(1)
        : first.breakers() + "  " + branch.title();
  }

  private static String accepted(Measurement m) {
    String least = m.least().map(TestPage::plain).orElse("");
    String most = m.most().map(TestPage::plain).orElse("");
    return m.unit().isEmpty() ? "" : (least.isEmpty() ? "up to " + most : most.isEmpty() ? least + " and more" : least + " to " + most);
  }

  private static String plain(double value) {
    return wattle.quantity.Quantity.plain(value, 3);
  }
}
