package wattle.emit.document.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import wattle.emit.media.page.Markup;

/**
 * What stands beneath the headline of a finding, for a page: lines of the plan, which are never broken, so that carets stand under
 * their words, and prose, which is.
 */
public final class PageBody {
  private static final Pattern SOURCE_LINE = Pattern.compile("\\s*\\d*\\s+│.*");

  private PageBody() {}

  /** @param body as {@link TextFindings#body} has it, or a part of it */
  public static void write(Markup page, String body) {
    List<String> source = new ArrayList<>();
    for (String line : body.lines().toList()) {
      if (SOURCE_LINE.matcher(line).matches()) {
        source.add(line);
      } else {
        lines(page, source);
        page.element("p", line.strip());
      }
    }
    lines(page, source);
  }

  private static void lines(Markup page, List<String> source) {
    if (!source.isEmpty()) {
      page.element("pre", String.join("\n", source), "class", "source", "tabindex", "0");
      source.clear();
    }
  }
}
