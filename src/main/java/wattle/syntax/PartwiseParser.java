package wattle.syntax;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Placement;
import wattle.finding.Source;

/**
 * Reads one file again and again while it is being edited. The text is cut into parts that mean the same wherever they
 * stand; a part that was there the last time is not read again, and its trees are the very same objects. A text with too
 * many mistakes is read as a whole. Whatever the text, the findings are those of {@link PlanParser}, and so is
 * the tree but for its spans, which the {@link Placement} puts in place.
 *
 * <p>For one thread.
 */
public final class PartwiseParser {
  private Map<String, List<Part>> known = Map.of();

  /** A part of the text, read; its excerpt is a source of its own. */
  private record Part(Source excerpt, Checked<PlanTree> read) {}

  /**
   * A file as read.
   *
   * @param placement where the spans of the tree stand; those of the findings are in place
   */
  public record Read(PlanTree tree, List<Finding> findings, Placement placement) {
    public Read {
      findings = List.copyOf(findings);
    }
  }

  /** Reads the text as it stands now. */
  public Read parse(Source source) {
    Map<String, List<Part>> now = new HashMap<>();
    Map<Source, wattle.finding.Span> places = new HashMap<>();
    List<Tree.Item> items = new ArrayList<>();
    Set<String> damagedWords = new HashSet<>();
    List<Finding> findings = new ArrayList<>();
    int at = 0;
    for (String text : TextParts.of(source.text())) {
      Part part = part(text, source.name(), now);
      places.put(part.excerpt, source.span(at, at + text.length()));
      at += text.length();
      items.addAll(part.read.value().items());
      damagedWords.addAll(part.read.value().damagedWords());
      findings.addAll(part.read.findings());
    }
    known = now;
    if (PlanParser.stopped(findings)) {
      return whole(source);
    }
    Placement placement = new Placement(places);
    List<Finding> placed = new ArrayList<>(placement.whole(findings));
    return new Read(new PlanTree(source, items, damagedWords), PlanParser.bounded(source, placed), placement);
  }

  private static Read whole(Source source) {
    Checked<PlanTree> read = PlanParser.parse(source);
    return new Read(read.value(), read.findings(), Placement.IN_PLACE);
  }

  /** Of parts with the same text, the first now is the first of the last time, and so on: each is one thing of the plan. */
  private Part part(String text, String name, Map<String, List<Part>> now) {
    List<Part> same = now.computeIfAbsent(text, t -> new ArrayList<>(1));
    List<Part> before = known.getOrDefault(text, List.of());
    Part part = same.size() < before.size() ? before.get(same.size()) : read(new Source(name, text));
    same.add(part);
    return part;
  }

  private static Part read(Source excerpt) {
    return new Part(excerpt, PlanParser.parse(excerpt));
  }
}
