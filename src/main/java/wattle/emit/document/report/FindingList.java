package wattle.emit.document.report;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import wattle.emit.document.findings.FindingMarks;
import wattle.emit.document.findings.PageBody;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.page.Markup;
import wattle.finding.Finding;
import wattle.finding.Severity;

/** Findings as a page shows them: gravest first, each with its lines, reason, fix and source, and a way to its line. */
final class FindingList {
  private final PlanText text;
  private final boolean linked;
  private final Map<Finding, String> ids = new IdentityHashMap<>();

  /** @param linked whether the text of the plan stands on the same page */
  FindingList(PlanText text, boolean linked) {
    this.text = text;
    this.linked = linked;
  }

  /** @param findings the facts of the plan; pictures on the page link to them */
  void writeTo(Markup page, List<Finding> findings) {
    for (int i = 0; i < findings.size(); i++) {
      ids.put(findings.get(i), FindingMarks.idOf(i));
    }
    List<Finding> standing = findings.stream().filter(f -> f.silenced().isEmpty()).toList();
    if (standing.isEmpty()) {
      page.element("p", "The checks found nothing. That is not the same as safe: see what was checked, below.");
    }
    for (Severity severity : Severity.values()) {
      standing.stream().filter(f -> f.severity() == severity).forEach(f -> finding(page, f));
    }
    List<Finding> silenced = findings.stream().filter(f -> f.silenced().isPresent()).toList();
    if (!silenced.isEmpty()) {
      page.element("h3", "Silenced by the plan");
      silenced.forEach(f -> finding(page, f));
    }
  }

  private void finding(Markup page, Finding finding) {
    page.open("article", "id", ids.get(finding), "class", "finding " + finding.severity());
    page.open("h3").element("span", finding.severity().toString(), "class", "severity").text(" " + finding.told()).close();
    finding.place().ifPresent(place -> {
      page.open("p", "class", "place");
      if (linked) {
        page.element("a", place.span().toString(), "href", "#" + text.idOf(place.span()));
      } else {
        page.text(place.span().toString());
      }
      page.close();
    });
    // The rest is what the terminal shows, so that the two never say different things; the place is the link above.
    String body = TextFindings.body(finding);
    PageBody.write(page, finding.place().isPresent() ? body.substring(body.indexOf('\n') + 1) : body);
    page.close();
  }
}
