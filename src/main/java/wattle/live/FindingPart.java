package wattle.live;

import java.util.List;
import wattle.emit.document.findings.PageBody;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.page.Markup;
import wattle.finding.Finding;

/** What is wrong with the plan as it stands on disk. */
final class FindingPart {
  private static final int MOST = 100;

  private FindingPart() {}

  static String html(Version version) {
    Markup out = new Markup();
    List<Finding> standing = version.facts().stream().filter(f -> f.silenced().isEmpty()).toList();
    out.element("p", TextFindings.summary(version.facts(), version.shown().source().name()));
    for (Finding finding : standing.subList(0, Math.min(MOST, standing.size()))) {
      out.open("article", "class", "finding " + finding.severity());
      out.open("h3").element("span", finding.severity().toString(), "class", "severity").text(" " + finding.told()).close();
      PageBody.write(out, TextFindings.body(finding));
      out.close();
    }
    if (standing.size() > MOST) {
      out.element("p", "and " + (standing.size() - MOST) + " more; wattle check lists all of them", "class", "note");
    }
    return out.toString();
  }
}
