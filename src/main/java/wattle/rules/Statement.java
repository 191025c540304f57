package wattle.rules;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Edit;
import wattle.finding.Span;
import wattle.model.Box;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.Panel;
import wattle.model.Room;
import wattle.model.Service;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;
import wattle.syntax.Tokens;
import wattle.syntax.Tree;

/**
 * What a plan wrote of a thing, token by token, for an edit of it.
 *
 * @param target the word before which further words are put; absent where they are put at the end of what is always said
 */
record Statement(Span span, List<Tree.Word> tokens, Optional<String> target) {
  /** Words of a device's line after which its kind and traits are over. */
  private static final Set<String> ENDS_TRAITS = Set.of("for", "at", "on");

  /**
   * The statement that a thing was made by; absent for a thing whose statement no edit changes.
   *
   * @param property what is to be changed of it, which may stand in a statement of its own; empty where that is all one
   */
  static Optional<Statement> of(Object thing, String property) {
    if (thing instanceof Breaker b) {
      return Optional.of(of(b.origin().whole(), targetOf(b)));
    }
    if (thing instanceof Panel p && property.equals("main")) {
      return p.main().map(m -> of(m.origin().whole(), Optional.empty()));
    }
    return spanOf(thing).map(span -> of(span, Optional.empty()));
  }

  private static Statement of(Span span, Optional<String> target) {
    return new Statement(span, Tokens.of(span), target);
  }

  private static Optional<Span> spanOf(Object thing) {
    if (thing instanceof Device d) {
      return Optional.of(d.origin().whole());
    }
    if (thing instanceof Wiring w) {
      return Optional.of(w.origin().whole());
    }
    if (thing instanceof RunOf r) {
      return Optional.of(r.section().origin().name());
    }
    if (thing instanceof Panel p) {
      return Optional.of(p.origin().whole());
    }
    if (thing instanceof Service s) {
      return Optional.of(s.origin().whole());
    }
    if (thing instanceof Box b) {
      return Optional.of(b.origin().whole());
    }
    return thing instanceof Room r ? Optional.of(r.origin().whole()) : Optional.empty();
  }

  private static Optional<String> targetOf(Breaker breaker) {
    if (breaker.target() instanceof Breaker.Target.ToBranch to) {
      return Optional.of(to.branch());
    }
    return breaker.target() instanceof Breaker.Target.ToPanel to ? Optional.of(to.panel()) : Optional.empty();
  }

  /** Where a figure, a wire size or a word stands that is this value; absent where it was worked out or taken as usual. */
  Optional<Span> placeOf(Object value) {
    for (int i = 0; i < tokens.size(); i++) {
      Optional<Span> place = value instanceof Quantity quantity
          ? figureAt(i, quantity)
          : value instanceof WireSize size ? sizeAt(i, size) : wordAt(i, value.toString());
      if (place.isPresent()) {
        return place;
      }
    }
    return Optional.empty();
  }

  private Optional<Span> figureAt(int i, Quantity value) {
    if (!isNumber(i) || i + 1 >= tokens.size()) {
      return Optional.empty();
    }
    return Units.find(text(i + 1))
        .map(unit -> Quantity.of(Double.parseDouble(text(i)), unit))
        .filter(q -> q.dimension().equals(value.dimension()) && Math.abs(q.si() - value.si()) <= 1e-9 * Math.abs(value.si()))
        .map(q -> tokens.get(i).span().to(tokens.get(i + 1).span()));
  }

  /** Two tokens for an aught such as 4/0; a count such as 2 x 12 is no size. */
  private Optional<Span> sizeAt(int i, WireSize size) {
    String[] parts = size.key().split("(?=/)|(?<=/)| ");
    int end = i + parts.length;
    boolean counts = end < tokens.size() && (text(end).equals("x") || text(end).equals("×"));
    if (counts || end > tokens.size() || !Arrays.asList(parts).equals(tokens.subList(i, end).stream().map(Tree.Word::text).toList())) {
      return Optional.empty();
    }
    boolean unit = end < tokens.size() && List.of("AWG", "kcmil").contains(text(end));
    return Optional.of(tokens.get(i).span().to(tokens.get(unit ? end : end - 1).span()));
  }

  private Optional<Span> wordAt(int i, String word) {
    return text(i).equals(word) ? Optional.of(tokens.get(i).span()) : Optional.empty();
  }

  /** Puts in those of some words that are not there; absent where all are. A word that is denied is affirmed. */
  Optional<Edit> with(String words) {
    for (int i = 1; i < tokens.size(); i++) {
      if (text(i).equals(words) && text(i - 1).equals("no")) {
        return Optional.of(new Edit(tokens.get(i - 1).span().to(tokens.get(i).span()), words));
      }
    }
    List<String> there = tokens.stream().map(Tree.Word::text).toList();
    List<String> lacking = Arrays.stream(words.split(" ")).filter(w -> !there.contains(w)).toList();
    int last = lastBefore();
    if (last < 0) {
      return Optional.empty();
    }
    Span place = tokens.get(last).span().after();
    return lacking.isEmpty() ? Optional.empty() : Optional.of(new Edit(place, " " + String.join(" ", lacking)));
  }

  /**
   * The token behind which further words are put: before what a slot feeds, before where a device is and what it works, before what is
   * in a box, before the closing dashes of a run; none where a run has dashes and no more.
   */
  private int lastBefore() {
    if (text(tokens.size() - 1).equals("--")) {
      return tokens.size() > 1 ? tokens.size() - 2 : -1;
    }
    for (int i = 1; i < tokens.size(); i++) {
      String text = text(i);
      boolean ends = target.isPresent() ? text.equals(target.get()) && !isUnit(i) : ENDS_TRAITS.contains(text);
      if (ends || text.startsWith("\"") || text.equals("{")) {
        return i - 1;
      }
    }
    return tokens.size() - 1;
  }

  /** A name such as A may be that of a branch; behind a number it is a unit. */
  private boolean isUnit(int i) {
    return isNumber(i - 1) && Units.find(text(i)).isPresent();
  }

  /** Takes words out that stand one after another, with the space before them; absent where they do not. */
  Optional<Edit> without(String words) {
    List<String> wanted = List.of(words.split(" "));
    for (int i = 1; i + wanted.size() <= tokens.size(); i++) {
      if (tokens.subList(i, i + wanted.size()).stream().map(Tree.Word::text).toList().equals(wanted)) {
        int from = tokens.get(i - 1).span().end();
        int start = tokens.get(i).span().start();
        int end = tokens.get(i + wanted.size() - 1).span().end();
        boolean ownLine = span.source().text().substring(from, start).indexOf('\n') >= 0;
        return Optional.of(new Edit(span.source().span(ownLine ? start : from, end), ""));
      }
    }
    return Optional.empty();
  }

  private String text(int i) {
    return tokens.get(i).text();
  }

  private boolean isNumber(int i) {
    return Character.isDigit(text(i).charAt(0)) && text(i).chars().allMatch(c -> c == '.' || c >= '0' && c <= '9');
  }
}
