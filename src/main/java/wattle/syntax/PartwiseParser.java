package wattle.syntax;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import wattle.finding.Checked;
import wattle.finding.Excerpt;
import wattle.finding.Finding;
import wattle.finding.Placement;
import wattle.finding.Source;

/**
 * Reads one file again and again while it is being edited. The text is cut into parts that mean the same wherever they
 * stand; a part that was there the last time is not read again, and its trees are the very same objects. Only what lies
 * between the first part that differs and the last is looked at. A text with too many mistakes is read as a whole. Whatever
 * the text, the findings are those of {@link PlanParser}, and so is the tree but for its spans, which the {@link Placement}
 * puts in place.
 *
 * <p>For one thread.
 */
public final class PartwiseParser {
  private static final Deque<Part> NONE = new ArrayDeque<>(0);

  private Cut known = new Cut("", List.of());

  /** A part of the text, read; its excerpt is a source of its own. */
  private record Part(Excerpt excerpt, Checked<PlanTree> read) {
    String text() {
      return excerpt.text();
    }
  }

  /** A text with its parts in order, which together are the text. */
  private record Cut(String text, List<Part> parts, int[] starts) {
    Cut(String text, List<Part> parts) {
      this(text, parts, new int[parts.size()]);
      int at = 0;
      for (int i = 0; i < starts.length; i++) {
        starts[i] = at;
        at += parts.get(i).text().length();
      }
    }
  }

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
    known = new Cut(source.text(), parts(source));
    List<Tree.Item> items = new ArrayList<>();
    Set<String> damagedWords = new HashSet<>();
    List<Finding> findings = new ArrayList<>();
    for (Part part : known.parts) {
      items.addAll(part.read.value().items());
      damagedWords.addAll(part.read.value().damagedWords());
      findings.addAll(part.read.findings());
    }
    if (PlanParser.stopped(findings)) {
      return whole(source);
    }
    Placement placement = Placement.of(source, known.parts.stream().map(Part::excerpt).toList());
    Mistakes mistakes = new Mistakes();
    placement.whole(findings).forEach(mistakes::add);
    return new Read(new PlanTree(source, items, damagedWords), mistakes.told(source), placement);
  }

  private static Read whole(Source source) {
    Checked<PlanTree> read = PlanParser.parse(source);
    return new Read(read.value(), read.findings(), Placement.IN_PLACE);
  }

  /** The parts up to the first that differs and those behind the last as they are; what lies between is cut and looked up. */
  private List<Part> parts(Source source) {
    String text = source.text();
    int shorter = Math.min(text.length(), known.text.length());
    int first = partsWithin(alikeAtTheStart(text, shorter), text);
    int start = first == 0 ? 0 : known.starts[first];
    int alike = alikeAtTheEnd(text, shorter - start);
    List<String> changed = new ArrayList<>();
    int behind = known.parts.size();
    for (int at = start; at < text.length() && behind == known.parts.size();) {
      int end = TextParts.end(text, at);
      changed.add(text.substring(at, end));
      at = end;
      if (text.length() - at <= alike) {
        int same = Arrays.binarySearch(known.starts, known.text.length() - (text.length() - at));
        behind = same >= 0 ? same : behind;
      }
    }
    List<Part> parts = new ArrayList<>(known.parts.subList(0, first));
    parts.addAll(read(changed, known.parts.subList(first, Math.max(first, behind)), source.name()));
    parts.addAll(known.parts.subList(behind, known.parts.size()));
    return parts;
  }

  /**
   * How many parts lie within so many characters and end where they ended. The last one of a text may go on, and a carriage
   * return no longer ends a part where a line feed has come behind it.
   */
  private int partsWithin(int alike, String text) {
    int found = Arrays.binarySearch(known.starts, alike);
    int parts = Math.max(0, found >= 0 ? found : -found - 2);
    boolean goesOn = parts > 0 && alike == known.starts[parts] && alike < text.length() && text.charAt(alike) == '\n';
    return goesOn ? parts - 1 : parts;
  }

  /** How many characters at the start are the same, that many at most. */
  private int alikeAtTheStart(String text, int most) {
    int alike = 0;
    while (alike < most && text.charAt(alike) == known.text.charAt(alike)) {
      alike++;
    }
    return alike;
  }

  /** How many characters at the end are the same, that many at most. */
  private int alikeAtTheEnd(String text, int most) {
    int alike = 0;
    while (alike < most && text.charAt(text.length() - 1 - alike) == known.text.charAt(known.text.length() - 1 - alike)) {
      alike++;
    }
    return alike;
  }

  /** Of parts with the same text, the first now is the first of before, and so on: each is one thing of the plan. */
  private static List<Part> read(List<String> texts, List<Part> before, String name) {
    Map<String, Deque<Part>> left = new HashMap<>();
    before.forEach(part -> left.computeIfAbsent(part.text(), t -> new ArrayDeque<>(1)).add(part));
    List<Part> now = new ArrayList<>();
    for (String text : texts) {
      Part found = left.getOrDefault(text, NONE).poll();
      now.add(found == null ? read(new Excerpt(name, text)) : found);
    }
    return now;
  }

  private static Part read(Excerpt excerpt) {
    return new Part(excerpt, PlanParser.parse(excerpt));
  }
}
