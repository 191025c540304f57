package wattle.finding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Something a reader should know about a plan, as data; every output is rendered from this and from nothing else.
 *
 * @param rule name of the rule, stable for ever, such as {@code unit-missing}
 * @param severity its weight
 * @param headline one line, lower case, no full stop: what is wrong, with the plan's own name and the figure
 * @param place the span at fault and a few words about it; absent only where no text could be read
 * @param related what it clashes with
 * @param reason what would happen in the house, one or two sentences; may be empty
 * @param figures the figures behind it, name to printed value, in reading order
 * @param fixes best first
 * @param source where the rule comes from; absent for findings about the notation itself
 * @param subject name of the thing that it is about, by which a plan may silence it; absent for what has no name
 * @param silenced the written reason why the plan silences it; absent for a finding that stands
 * @param ofNewWork of existing work that a rule for new work would find fault with, how grave that would be if it were new; it is advice
 *     then. Absent for a finding that binds the work as it is
 * @param alike the same fact at further places, each as a finding of its own; empty where it stands for itself
 */
public record Finding(
    String rule,
    Severity severity,
    String headline,
    Optional<Mark> place,
    List<Mark> related,
    String reason,
    Map<String, String> figures,
    List<Fix> fixes,
    Optional<Citation> source,
    Optional<String> subject,
    Optional<String> silenced,
    Optional<Severity> ofNewWork,
    List<Finding> alike) {

  private static final Pattern FIGURE = Pattern.compile("(?<![\\w.])[0-9]+(?:[.][0-9]+)?(?![\\w.])");

  /** By file, place, severity and rule, so that the same input gives the same order. */
  public static final Comparator<Finding> BY_PLACE = Finding::compareByPlace;

  /** By danger first, then by place. */
  public static final Comparator<Finding> BY_DANGER = (one,
      other) -> one.severity == other.severity ? compareByPlace(one, other) : one.severity.compareTo(other.severity);

  public Finding {
    related = List.copyOf(related);
    figures = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(figures));
    fixes = List.copyOf(fixes);
    alike = List.copyOf(alike);
  }

  private static int compareByPlace(Finding one, Finding other) {
    int order = one.file().compareTo(other.file());
    order = order != 0 ? order : Integer.compare(one.start(), other.start());
    order = order != 0 ? order : one.severity.compareTo(other.severity);
    order = order != 0 ? order : one.rule.compareTo(other.rule);
    return order != 0 ? order : one.headline.compareTo(other.headline);
  }

  private String file() {
    return place.isPresent() ? place.get().span().source().name() : "";
  }

  private int start() {
    return place.isPresent() ? place.get().span().start() : -1;
  }

  public static Builder error(String rule, String headline) {
    return new Builder(rule, Severity.ERROR, headline);
  }

  public static Builder error(Mistake kind, String headline) {
    return error(kind.word(), headline);
  }

  public static Builder warning(String rule, String headline) {
    return new Builder(rule, Severity.WARNING, headline);
  }

  public static Builder advice(String rule, String headline) {
    return new Builder(rule, Severity.ADVICE, headline);
  }

  public static Builder of(String rule, Severity severity, String headline) {
    return new Builder(rule, severity, headline);
  }

  /** The same finding, silenced for a reason that the plan gives. */
  public Finding silencedBecause(String why) {
    return new Finding(rule, severity, headline, place, related, reason, figures, fixes, source, subject, Optional.of(why), ofNewWork,
        alike);
  }

  /** The same finding of existing work, which it would bind if it were new. */
  public Finding ifNew() {
    return new Finding(rule, Severity.ADVICE, headline, place, related, reason, figures, fixes, source, subject, silenced,
        Optional.of(severity), alike);
  }

  /** The same finding, with a further sentence behind its reason. */
  public Finding remarked(String sentence) {
    String more = reason.isEmpty() ? sentence : reason + " " + sentence;
    return new Finding(rule, severity, headline, place, related, more, figures, fixes, source, subject, silenced, ofNewWork, alike);
  }

  /** The same fact, with the findings that tell it of other places; each of them once, whatever was gathered in it before. */
  public Finding alsoAt(List<Finding> others) {
    return new Finding(rule, severity, headline, place, related, reason, figures, fixes, source, subject, silenced, ofNewWork,
        others.stream().flatMap(o -> o.each().stream()).toList());
  }

  /** The same fact, at one more place beside those that it has. */
  public Finding alsoAtPlace(Finding other) {
    return alsoAt(Stream.concat(alike.stream(), Stream.of(other)).toList());
  }

  /** This finding without the others of its fact, then those: one for each place. */
  public List<Finding> each() {
    if (alike.isEmpty()) {
      return List.of(this);
    }
    List<Finding> each = new ArrayList<>(List.of(alsoAt(List.of())));
    each.addAll(alike);
    return each;
  }

  /** Whether another finding tells the same fault of the same thing, be it with other figures. */
  public boolean isOfSameFault(Finding other) {
    return rule.equals(other.rule) && subject.equals(other.subject) && withoutFigures().equals(other.withoutFigures());
  }

  /** The headline with a mark for each figure, which changes with other parts of the plan. */
  public String withoutFigures() {
    return FIGURE.matcher(headline).replaceAll("#");
  }

  /** Its severity in words; of existing work that is judged as if it were new, with what it would be then. */
  public String weight() {
    return severity + ofNewWork.map(s -> " if it were new (" + s + ")").orElse("");
  }

  /** The headline with the names of the other things of which it is so. */
  public String told() {
    return headline + Places.behind(this);
  }

  /** Every place of the fact, each once, its own first. */
  public List<Mark> everywhere() {
    return Places.of(this);
  }

  /** What it clashes with, at every place of the fact. */
  public List<Mark> relatedEverywhere() {
    return each().stream().flatMap(f -> f.related.stream()).distinct().toList();
  }

  /** What to do, at every place of the fact. */
  public List<Fix> fixesEverywhere() {
    return each().stream().flatMap(f -> f.fixes.stream()).distinct().toList();
  }

  /** Gathers the parts of a finding; a reader would otherwise count ten commas. */
  public static final class Builder {
    private final String rule;
    private final Severity severity;
    private final String headline;
    private Optional<Mark> place = Optional.empty();
    private final List<Mark> related = new ArrayList<>();
    private String reason = "";
    private final Map<String, String> figures = new LinkedHashMap<>();
    private final List<Fix> fixes = new ArrayList<>();
    private Optional<Citation> source = Optional.empty();
    private Optional<String> subject = Optional.empty();

    private Builder(String rule, Severity severity, String headline) {
      this.rule = rule;
      this.severity = severity;
      this.headline = headline;
    }

    public Builder at(Span span, String words) {
      place = Optional.of(new Mark(span, words));
      return this;
    }

    public Builder with(Span span, String words) {
      related.add(new Mark(span, words));
      return this;
    }

    public Builder because(String text) {
      reason = text;
      return this;
    }

    public Builder figure(String name, String value) {
      figures.put(name, value);
      return this;
    }

    public Builder fix(Fix fix) {
      fixes.add(fix);
      return this;
    }

    public Builder fix(String order) {
      return fix(Fix.of(order));
    }

    public Builder source(Citation citation) {
      source = Optional.of(citation);
      return this;
    }

    /** Names the thing that it is about. */
    public Builder about(Optional<String> name) {
      subject = name;
      return this;
    }

    public Builder about(String name) {
      return about(Optional.of(name));
    }

    public Finding build() {
      return new Finding(
          rule, severity, headline, place, related, reason, figures, fixes, source, subject, Optional.empty(), Optional.empty(),
          List.of());
    }
  }
}
