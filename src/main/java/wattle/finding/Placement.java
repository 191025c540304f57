package wattle.finding;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where excerpts stand in the texts that they are of. A text that changes little from one moment to the next is read in
 * excerpts, and those that stayed the same are not read again; the spans of what was read in them stay within the excerpt
 * and are placed in the whole text only when they are shown.
 */
public final class Placement {
  /** Nothing was read in excerpts: every span is where it says. */
  public static final Placement IN_PLACE = new Placement(List.of());

  /** A text and the excerpts which, one behind the other, are the whole of it. */
  private record Cut(Source whole, List<Excerpt> excerpts) {}

  private final List<Cut> cuts;
  private volatile Map<Source, Span> places; // worked out when it is first asked for; most key strokes never do

  private Placement(List<Cut> cuts) {
    this.cuts = cuts;
  }

  /**
   * Of one text.
   *
   * @param excerpts which, one behind the other, are the whole of it
   */
  public static Placement of(Source whole, List<Excerpt> excerpts) {
    return new Placement(List.of(new Cut(whole, List.copyOf(excerpts))));
  }

  /** Several in one, of different texts. */
  public static Placement of(Collection<Placement> several) {
    return new Placement(several.stream().flatMap(p -> p.cuts.stream()).toList());
  }

  private Map<Source, Span> places() {
    Map<Source, Span> known = places;
    if (known == null) {
      known = new HashMap<>();
      for (Cut cut : cuts) {
        int at = 0;
        for (Excerpt excerpt : cut.excerpts) {
          known.put(excerpt, cut.whole.span(at, at + excerpt.text().length()));
          at += excerpt.text().length();
        }
      }
      places = known;
    }
    return known;
  }

  /** The same range of characters, in the whole text; of a part that is placed, in the text as it was read. */
  public Span whole(Span span) {
    Span written = span.written();
    Span excerpt = places().get(written.source());
    return excerpt == null
        ? written
        : new Span(excerpt.source(), excerpt.start() + span.start(), excerpt.start() + span.end());
  }

  /** Whether a finding speaks of excerpts alone that have a place here. */
  public boolean holds(Finding finding) {
    return finding.place().isPresent()
        && holds(finding.place().get().span())
        && finding.related().stream().allMatch(m -> holds(m.span()))
        && finding.fixes().stream().flatMap(f -> f.edits().stream()).allMatch(e -> holds(e.span()));
  }

  private boolean holds(Span span) {
    return places().containsKey(span.source().written())
        && (span.source().placed().isEmpty() || holds(span.source().placed().get().place()));
  }

  /** Findings with every place in them a place in a whole text; what is found in many placements is told once. */
  public List<Finding> whole(List<Finding> findings) {
    return Repeated.once(findings, this);
  }

  /** One finding by itself, with every place in it a place in a whole text. */
  Finding inPlace(Finding finding) {
    Optional<Mark> place = finding.place().map(this::whole);
    List<Mark> related = finding.related().stream().map(this::whole).toList();
    List<Fix> fixes = finding.fixes().stream().map(f -> whole(f, finding.place())).toList();
    return new Finding(
        finding.rule(), finding.severity(), finding.headline(), place, related, finding.reason(), finding.figures(), fixes,
        finding.source(), finding.subject(), finding.silenced(), finding.ofNewWork(), finding.alike());
  }

  private Mark whole(Mark mark) {
    return new Mark(whole(mark.span()), mark.words());
  }

  /**
   * A fix of the text as it was read. Within a pattern its names are those of the pattern; where it would write a name that
   * has no meaning there, or over a parameter, it stays an order without edits.
   */
  private Fix whole(Fix fix, Optional<Mark> place) {
    if (fix.edits().isEmpty()) {
      return place.flatMap(m -> m.span().source().placed()).flatMap(p -> p.local(fix.order())).map(Fix::of).orElse(fix);
    }
    List<Edit> edits = new ArrayList<>();
    String order = fix.order();
    for (Edit edit : fix.edits()) {
      Optional<Placed> placed = edit.span().source().placed();
      Optional<String> text = placed.isEmpty() ? Optional.of(edit.text()) : placed.get().local(edit.text());
      if (text.isEmpty() || placed.isPresent() && placed.get().differs(edit.span().text())) {
        return Fix.of(fix.order());
      }
      order = placed.flatMap(p -> p.local(fix.order())).orElse(order);
      edits.add(new Edit(whole(edit.span()), text.get()));
    }
    return new Fix(order, edits, fix.safety());
  }
}
