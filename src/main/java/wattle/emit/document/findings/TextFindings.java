package wattle.emit.document.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import wattle.emit.media.text.Wrapped;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mark;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.words.Caution;

/**
 * Findings for people: a headline that can stand alone, the place with its lines and carets, the reason, the fix and
 * where it is from.
 */
public final class TextFindings {
  private static final int HEADLINE_WIDTH = 80;

  /** What stands around a line of the plan: its indent, the bar, and an ellipsis at each end. */
  private static final int MARGIN = 7;

  /** Of the further places of a fact, how many are shown with their line. */
  private static final int PLACES_SHOWN = 5;

  /** Of the fixes at the places of a fact, how many are shown at least. */
  private static final int FIXES_SHOWN = 3;

  private final Palette palette;
  private final Map<String, String> plans;
  private final OptionalInt columns;

  public TextFindings(boolean colored) {
    this(colored, Map.of());
  }

  /** @param plans of rules that stand beside a plan, by name, the plan with which they are explained */
  public TextFindings(boolean colored, Map<String, String> plans) {
    this(colored, plans, OptionalInt.empty());
  }

  /**
   * @param plans of rules that stand beside a plan, by name, the plan with which they are explained
   * @param columns of the terminal, at which prose is broken and lines of the plan are cut; absent where no terminal shows them
   */
  public TextFindings(boolean colored, Map<String, String> plans, OptionalInt columns) {
    this.columns = columns;
    this.palette = colored ? Palette.COLORED : Palette.PLAIN;
    this.plans = Map.copyOf(plans);
  }

  /** All of them, one after another with an empty line between. */
  public String render(List<Finding> findings) {
    StringBuilder out = new StringBuilder();
    for (Finding finding : findings) {
      out.append(render(finding)).append('\n');
    }
    return out.toString();
  }

  /** One finding, ending in a line end. */
  public String render(Finding finding) {
    StringBuilder out = new StringBuilder();
    String rule = "[" + finding.rule() + "]";
    String ifNew = finding.ofNewWork().map(s -> " if it were new (" + s + ")").orElse("");
    String head = finding.severity() + ifNew + ": " + finding.told();
    int gap = Math.max(1,
        Math.min(HEADLINE_WIDTH, columns.orElse(HEADLINE_WIDTH)) - wattle.emit.media.text.DisplayWidth.of(head) - rule.length());
    out.append(palette.of(finding.severity()))
        .append(head)
        .append(palette.reset())
        .append(" ".repeat(gap))
        .append(rule)
        .append('\n');
    body(out, finding);
    return out.toString();
  }

  /** What stands beneath the headline, without colors: place, lines, reason, fix, source. */
  public static String body(Finding finding) {
    StringBuilder out = new StringBuilder();
    new TextFindings(false).body(out, finding);
    return out.toString();
  }

  private void body(StringBuilder out, Finding finding) {
    finding.place().ifPresent(place -> excerpt(out, place, finding));
    if (!finding.reason().isEmpty()) {
      prose(out, "  " + finding.reason(), "  ");
    }
    List<String> orders = finding.fixesEverywhere().stream().map(Fix::order).distinct().toList();
    int shown = Math.max(FIXES_SHOWN, finding.fixes().size());
    orders.stream().limit(shown).forEach(o -> prose(out, "  fix: " + o, "       "));
    if (orders.size() > shown) {
      out.append("  fix: the same at the other places\n");
    }
    finding.silenced().ifPresent(why -> out.append("  silenced: ").append(why).append('\n'));
    String plan = plans.getOrDefault(finding.rule(), "");
    prose(out, "  " + finding.source().map(s -> "source: " + s + "; ").orElse("") + "more: wattle explain " + finding.rule()
        + (plan.isEmpty() ? "" : " " + plan), "  ");
  }

  private void prose(StringBuilder out, String text, String indent) {
    out.append(columns.isPresent() ? Wrapped.at(text, columns.getAsInt(), indent) : text).append('\n');
  }

  private record Shown(Mark mark, char sign) {}

  private void excerpt(StringBuilder out, Mark place, Finding finding) {
    Span at = place.span();
    out.append("  ").append(at).append('\n');
    Map<Source, Map<Integer, List<Shown>>> lines = new LinkedHashMap<>();
    add(lines, new Shown(place, '^'));
    finding.related().forEach(m -> add(lines, new Shown(m, '-')));
    List<Mark> others = finding.everywhere().subList(1, finding.everywhere().size());
    others.stream().limit(PLACES_SHOWN).forEach(m -> add(lines, new Shown(m, '^')));
    int digits = lines.values().stream().flatMap(m -> m.keySet().stream()).mapToInt(n -> Integer.toString(n).length()).max().orElse(1);
    digits = Math.max(digits, 3);
    for (Map.Entry<Source, Map<Integer, List<Shown>>> file : lines.entrySet()) {
      if (!file.getKey().equals(at.source())) {
        Mark first = file.getValue().values().iterator().next().get(0).mark;
        out.append("  ").append(first.span()).append('\n');
      }
      for (Map.Entry<Integer, List<Shown>> line : ordered(file.getValue(), file.getKey().equals(at.source()) ? at.line() : 0)) {
        line(out, file.getKey(), line.getKey(), line.getValue(), digits);
      }
    }
    if (others.size() > PLACES_SHOWN) {
      out.append("  and at ")
          .append(String.join(", ", others.stream().skip(PLACES_SHOWN).map(m -> from(m.span(), at.source())).toList())).append('\n');
    }
  }

  /** A place as it is told beside one in a text: without the name of the file where it is the same. */
  private static String from(Span span, Source source) {
    return span.source().equals(source) ? span.line() + ":" + span.column() : span.toString();
  }

  /** The line at fault first, then the others in the order of the file. */
  private static List<Map.Entry<Integer, List<Shown>>> ordered(Map<Integer, List<Shown>> lines, int first) {
    List<Map.Entry<Integer, List<Shown>>> entries = new ArrayList<>(lines.entrySet());
    entries.sort(Comparator.comparing((Map.Entry<Integer, List<Shown>> e) -> e.getKey() != first).thenComparing(Map.Entry::getKey));
    return entries;
  }

  private static void add(Map<Source, Map<Integer, List<Shown>>> lines, Shown shown) {
    Span span = shown.mark.span();
    lines
        .computeIfAbsent(span.source(), s -> new TreeMap<>())
        .computeIfAbsent(span.line(), l -> new ArrayList<>())
        .add(shown);
  }

  private void line(StringBuilder out, Source source, int number, List<Shown> marks, int digits) {
    DisplayLine line = new DisplayLine(
        source, number, marks.get(0).mark.span().start(),
        columns.isPresent() ? Math.min(DisplayLine.WIDEST, columns.getAsInt() - digits - MARGIN) : DisplayLine.WIDEST);
    out.append("  ").append(String.format(Locale.ROOT, "%" + digits + "d", number)).append(" │ ").append(line.text()).append('\n');
    int start = source.startOfLine(number);
    int length = source.line(number).length();
    for (List<Shown> alike : rows(marks)) {
      Shown first = alike.get(0);
      StringBuilder row = new StringBuilder();
      for (Shown shown : alike) {
        int from = line.column(Math.min(shown.mark.span().start() - start, length));
        int to = Math.max(from + 1, line.column(Math.min(shown.mark.span().end() - start, length)));
        row.append(" ".repeat(Math.max(0, from - row.length())))
            .append(String.valueOf(first.sign).repeat(Math.max(0, to - Math.max(from, row.length()))));
      }
      int blank = row.indexOf(String.valueOf(first.sign));
      out.append("  ").append(" ".repeat(digits)).append(" │ ").append(" ".repeat(blank))
          .append(palette.mark(first.sign)).append(row.substring(blank));
      if (!first.mark.words().isEmpty()) {
        out.append(' ').append(first.mark.words());
      }
      out.append(palette.reset()).append('\n');
    }
  }

  /** Marks of a line that say the same stand in one row: the same fact at several places, in the order of the line. */
  private static List<List<Shown>> rows(List<Shown> marks) {
    Map<Object, List<Shown>> rows = new LinkedHashMap<>();
    marks.forEach(m -> rows.computeIfAbsent(List.of(m.sign, m.mark.words()), k -> new ArrayList<>()).add(m));
    rows.values().forEach(row -> row.sort(Comparator.comparing(s -> s.mark.span().start())));
    return List.copyOf(rows.values());
  }

  /** How many facts there are of each severity, what was silenced; never a word about whether the house is safe. */
  public static String summary(List<Finding> findings, String checked) {
    return FindingCounts.of(findings).words() + " in " + checked + ". " + Caution.SHORT;
  }

  /** Color sequences of a terminal; all empty where color is not wanted. */
  private record Palette(String error, String warning, String advice, String related, String reset) {
    static final Palette PLAIN = new Palette("", "", "", "", "");
    static final Palette COLORED = new Palette("\u001b[1;31m", "\u001b[1;33m", "\u001b[1;36m", "\u001b[34m", "\u001b[0m");

    String of(Severity severity) {
      return switch (severity) {
        case ERROR -> error;
        case WARNING -> warning;
        case ADVICE -> advice;
      };
    }

    String mark(char sign) {
      return sign == '^' ? error : related;
    }
  }
}
