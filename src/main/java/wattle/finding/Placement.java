package wattle.finding;

import java.util.Collection;
import java.util.Collections;
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
  public static final Placement IN_PLACE = new Placement(Map.of());

  private final Map<Source, Span> places;

  /**
   * @param places of each excerpt, the span in the whole text that it is
   */
  public Placement(Map<Source, Span> places) {
    this.places = Collections.unmodifiableMap(new HashMap<>(places));
  }

  /** Several in one, of different texts. */
  public static Placement of(Collection<Placement> several) {
    Map<Source, Span> all = new HashMap<>();
    several.forEach(p -> all.putAll(p.places));
    return new Placement(all);
  }

  /** The same range of characters, in the whole text. */
  public Span whole(Span span) {
    Span excerpt = places.get(span.source());
    return excerpt == null
        ? span
        : new Span(excerpt.source(), excerpt.start() + span.start(), excerpt.start() + span.end());
  }

  /** Whether a finding speaks of excerpts alone that have a place here. */
  public boolean holds(Finding finding) {
    return finding.place().isPresent()
        && places.containsKey(finding.place().get().span().source())
        && finding.related().stream().allMatch(m -> places.containsKey(m.span().source()))
        && finding.fixes().stream().flatMap(f -> f.edits().stream()).allMatch(e -> places.containsKey(e.span().source()));
  }

  /** A finding with every place in it a place in a whole text. */
  public Finding whole(Finding finding) {
    if (places.isEmpty()) {
      return finding;
    }
    Optional<Mark> place = finding.place().map(this::whole);
    List<Mark> related = finding.related().stream().map(this::whole).toList();
    List<Fix> fixes =
        finding.fixes().stream()
            .map(f -> new Fix(f.order(), f.edits().stream().map(e -> new Edit(whole(e.span()), e.text())).toList(), f.safety()))
            .toList();
    return new Finding(
        finding.rule(), finding.severity(), finding.headline(), place, related, finding.reason(), finding.figures(), fixes,
        finding.source(), finding.subject(), finding.silenced());
  }

  private Mark whole(Mark mark) {
    return new Mark(whole(mark.span()), mark.words());
  }
}
