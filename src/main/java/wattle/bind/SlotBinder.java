package wattle.bind;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.function.Predicate;
import wattle.evaluate.Evaluator;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Panel;
import wattle.model.Protection;
import wattle.model.Slot;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.syntax.Tree;

/** The slot lines of a panel: ratings, traits, handles, and whether two of them want one slot. */
final class SlotBinder {
  private static final Map<String, Integer> POLES = Map.of("single-pole", 1, "two-pole", 2, "three-pole", 3);
  static final List<String> TRAITS = List.of(
      "two-pole", "single-pole", "three-pole", "handle-tied", "arc-fault", "ground-fault", "fuse", "pinned",
      "back-fed", "interlocked", "switched-neutral", "later", "spare", "type-b", "type-c", "type-d",
      "edison-base", "type-s", "cartridge");

  private final Scope scope;
  private final Set<String> thingsFed;

  /**
   * @param thingsFed names of all branches and panels; other words of a slot line may be misspelled traits or units
   */
  SlotBinder(Scope scope, Set<String> thingsFed) {
    this.scope = scope;
    this.thingsFed = thingsFed;
  }

  List<Way> bind(String panel, List<Tree.Slot> lines, Optional<Integer> slotCount) {
    List<Way> ways = new ArrayList<>();
    Map<Integer, List<Taken>> taken = new HashMap<>();
    for (Tree.Slot line : lines) {
      Way way = way(panel, line);
      checkRange(way, slotCount, panel);
      checkFree(way, taken);
      ways.add(way);
    }
    return ways;
  }

  private Way way(String panel, Tree.Slot line) {
    List<Slot> slots = line.slots().numbers().stream().map(n -> new Slot(n.number(), n.half(), n.misfit())).toList();
    Set<String> traits = line.traits().stream().map(Tree.Word::text).collect(Collectors.toCollection(LinkedHashSet::new));
    line.words().stream().filter(this::isBase).map(Tree.Word::text).forEach(traits::add);
    Set<Protection> protections = EnumSet.noneOf(Protection.class);
    for (Protection protection : Protection.values()) {
      if (traits.contains(protection.word())) {
        protections.add(protection);
      }
    }
    if (!line.legs().isEmpty() && line.legs().size() != slots.size()) {
      scope.report(
          Finding.error("leg-count", "slot " + line.slots().text() + " has " + slots.size() + (slots.size() == 1 ? " pole" : " poles")
              + " and states " + line.legs().size() + (line.legs().size() == 1 ? " leg" : " legs"))
              .at(line.legs().get(0).span().to(line.legs().get(line.legs().size() - 1).span()), "a leg for each pole, such as A+B")
              .fix(withoutLegs(line.legs())));
    }
    Optional<Tree.Word> target = target(line);
    Optional<Quantity> rating = rating(line, target);
    return new Way(
        new BreakerId(panel, slots),
        line,
        isFuse(traits) ? Breaker.Device.FUSE : Breaker.Device.BREAKER,
        handle(line, traits),
        rating,
        interrupting(line),
        residual(line),
        protections,
        target,
        traits);
  }

  /** A word for what a fuse sits in, where nothing of the plan has that name. */
  private boolean isBase(Tree.Word word) {
    return !thingsFed.contains(word.text()) && java.util.Arrays.stream(Breaker.Base.values()).anyMatch(b -> b.word().equals(word.text()));
  }

  /** Who says what a fuse sits in has said that it is one. */
  private static boolean isFuse(Set<String> traits) {
    return traits.contains("fuse") || java.util.Arrays.stream(Breaker.Base.values()).anyMatch(b -> traits.contains(b.word()));
  }

  private Breaker.Handle handle(Tree.Slot line, Set<String> traits) {
    int slots = line.slots().numbers().size();
    for (Map.Entry<String, Integer> poles : POLES.entrySet()) {
      if (traits.contains(poles.getKey()) && poles.getValue() != slots) {
        scope.report(
            Finding
                .error(Mistake.POLE_COUNT,
                    "a " + poles.getKey() + " breaker takes " + poles.getValue() + (poles.getValue() == 1 ? " slot" : " slots"))
                .at(line.slots().span(), slots == 1 ? "one slot" : slots + " slots")
                .fix(poles.getValue() == 2 && slots == 1 && line.slots().isWritten()
                    ? pairWith(line)
                    : inAsMany(line, poles.getKey(), slots)));
      }
    }
    if (slots == 1) {
      return Breaker.Handle.SINGLE;
    }
    if (traits.contains("handle-tied")) {
      return Breaker.Handle.TIED;
    }
    boolean told = POLES.keySet().stream().anyMatch(traits::contains) || isFuse(traits) || traits.contains("spare");
    if (!told) {
      scope.report(
          Finding.error(Mistake.HANDLE_UNSTATED, "nothing says how the poles in " + line.slots().text() + " move together")
              .at(line.slots().span(), slots + " slots")
              .because("A two-pole breaker opens both hots at once. Tied handles open both only when thrown by hand.")
              .fix(Fix.offered("write two-pole after its rating", line.slots().span().after(), " two-pole")));
    }
    return Breaker.Handle.COMMON_TRIP;
  }

  /** Takes out the legs, and the word before them. */
  private static Fix withoutLegs(List<Tree.Word> legs) {
    String order = "state a leg for each pole, or take them out where the slots say it";
    Span written = legs.get(0).span().to(legs.get(legs.size() - 1).span());
    int word = written.source().text().lastIndexOf("leg", written.start());
    return word < 0 ? Fix.of(order) : Fix.takenOut(order, written.source().span(word, written.end()));
  }

  /** Writes the word for as many poles as a line has slots. */
  private static Fix inAsMany(Tree.Slot line, String word, int slots) {
    Optional<String> right = POLES.entrySet().stream().filter(p -> p.getValue() == slots).map(Map.Entry::getKey).findFirst();
    Optional<Tree.Word> written = line.traits().stream().filter(t -> t.text().equals(word)).findFirst();
    return right.isPresent() && written.isPresent()
        ? Fix.offered("name as many slots as it has poles, or write " + right.get(), written.get().span(), right.get())
        : Fix.of("name as many slots as it has poles");
  }

  private static Fix pairWith(Tree.Slot line) {
    String pair = line.slots().span().text() + "+" + (line.slots().numbers().get(0).number() + 2);
    return Fix.offered("write " + pair, line.slots().span(), pair);
  }

  private Optional<Tree.Word> target(Tree.Slot line) {
    List<Tree.Word> words = line.words().stream().filter(w -> !isBase(w)).toList();
    Optional<Tree.Word> known = words.stream().filter(w -> thingsFed.contains(w.text())).findFirst();
    Optional<Tree.Word> target = known.isPresent() ? known : words.stream().filter(w -> !isUnitLike(line, w)).reduce((a, b) -> b);
    for (Tree.Word word : words) {
      if (target.isPresent() && word == target.get() || isUnitLike(line, word)) {
        continue;
      }
      Finding.Builder finding = Finding.error(Mistake.WORD_UNKNOWN, "'" + word + "' is not a word for a slot line")
          .at(word.span(), "protection such as arc-fault, or what the slot feeds, can be written here");
      NearNames.of(word.text(), TRAITS).forEach(n -> finding.fix(Fix.safe("write " + n, word.span(), n)));
      scope.report(finding);
    }
    return target;
  }

  /** A word right after a bare rating that may be a unit misspelled: {@code 15 Amp}. */
  private boolean isUnitLike(Tree.Slot line, Tree.Word word) {
    return !thingsFed.contains(word.text())
        && line.amounts().stream()
            .anyMatch(
                a -> a instanceof Tree.Figure f && f.unit().isEmpty()
                    && word.span().source().text().substring(f.span().end(), Math.max(f.span().end(), word.span().start())).isBlank()
                    && word.span().start() >= f.span().end()
                    && word.text().length() <= 8 && TRAITS.stream().noneMatch(word.text()::equals)
                    && line.words().size() > 1);
  }

  private Optional<Quantity> rating(Tree.Slot line, Optional<Tree.Word> target) {
    for (Tree.Expression amount : line.amounts()) {
      if (amount instanceof Tree.Figure f && f.unit().isEmpty()) {
        Optional<Tree.Word> after = line.words().stream().filter(w -> isUnitLike(line, w) && w.span().start() >= f.span().end())
            .findFirst();
        if (after.isPresent()) {
          String text = f.span().text() + " A";
          scope.report(
              Finding.error(Mistake.UNIT_UNKNOWN, "no unit is called '" + after.get() + "'")
                  .at(after.get().span(), "amperes are expected here")
                  .fix(Fix.safe("write " + text, f.span().to(after.get().span()), text)));
          return Optional.empty();
        }
        String text = f.span().text() + " A";
        scope.report(
            Finding.error(Mistake.UNIT_MISSING, "a breaker rating needs a unit")
                .at(f.span(), "amperes are expected here")
                .fix(Fix.safe(text, f.span(), text)));
        return Optional.empty();
      }
      Optional<Quantity> value = scope.evaluator().valueOf(amount, Dimension.CURRENT, "a breaker rating");
      if (value.isEmpty() || isKilo(value.get()) || isMilli(value.get())) {
        continue;
      }
      reportOthers(line, amount, value.get(), q -> !isKilo(q) && !isMilli(q), "the rating of a breaker");
      if (value.get().si() <= 0) {
        scope.report(
            Finding.error(Mistake.RATING_NOT_POSITIVE, "a breaker cannot be rated " + value.get())
                .at(amount.span(), "a rating such as 15 A is expected here"));
        return Optional.empty();
      }
      return value;
    }
    boolean open = line.traits().stream().anyMatch(t -> t.text().equals("later") || t.text().equals("spare"));
    if (line.amounts().isEmpty() && !open) {
      scope.report(
          Finding.error(Mistake.RATING_MISSING, "slot " + line.slots().text() + " has no rating")
              .at(line.slots().span().after(), Dimension.CURRENT.trade() + " is expected here")
              .fix("write its rating, such as 15 A")
              .fix(Fix.offered("write later where it is not decided", line.slots().span().after(), "  later")));
    }
    return Optional.empty();
  }

  private static boolean isKilo(Quantity current) {
    return current.unit().equals(Units.KILOAMPERE);
  }

  private static boolean isMilli(Quantity current) {
    return current.unit().symbol().equals("mA");
  }

  /** Reports every further figure of a kind that a slot line has room for one of. */
  private void reportOthers(Tree.Slot line, Tree.Expression used, Quantity value, Predicate<Quantity> alike, String what) {
    for (Tree.Expression other : line.amounts()) {
      Optional<Quantity> second = other == used ? Optional.empty() : scope.quietly(other);
      if (second.filter(q -> q.dimension().equals(Dimension.CURRENT) && alike.test(q)).isPresent()) {
        scope.reportSecond(other, what, value);
      } else if (second.filter(q -> !q.dimension().equals(Dimension.CURRENT)).isPresent()
          && line.amounts().indexOf(other) > line.amounts().indexOf(used)) {
        scope.evaluator().valueOf(other, Dimension.CURRENT, "a figure of a slot line");
      }
    }
  }

  private Optional<Quantity> interrupting(Tree.Slot line) {
    return amount(line, "kA");
  }

  private Optional<Quantity> residual(Tree.Slot line) {
    return amount(line, "mA").filter(q -> q.si() > 0);
  }

  private Optional<Quantity> amount(Tree.Slot line, String unit) {
    return line.amounts().stream()
        .filter(a -> !(a instanceof Tree.Figure f) || f.unit().isPresent() && f.unit().get().text().equals(unit))
        .flatMap(a -> new Evaluator(scope.constants(), f -> {}).valueOf(a).stream())
        .filter(q -> q.unit().symbol().equals(unit))
        .findFirst();
  }

  private void checkRange(Way way, Optional<Integer> stated, String panel) {
    int count = stated.orElse(Panel.MOST_SLOTS);
    for (int i = 0; i < way.id().slots().size(); i++) {
      int number = way.id().slots().get(i).number();
      if (number < 1 || number > count) {
        scope.report(
            Finding.error(Mistake.SLOT_OUT_OF_RANGE, "panel '" + panel + "' has no slot " + way.tree().slots().numbers().get(i).text())
                .at(way.tree().slots().numbers().get(i).span(),
                    (stated.isPresent() ? "its slots are 1 to " : "a slot is from 1 to ") + count)
                .fix("use a slot from 1 to " + count));
      }
    }
  }

  /** A slot that a line has taken, and where that says so. */
  private record Taken(Slot slot, Way by, Span at) {}

  /** @param taken by its number; what this line takes is added */
  private void checkFree(Way way, Map<Integer, List<Taken>> taken) {
    List<Taken> own = new ArrayList<>();
    boolean free = true;
    for (int i = 0; i < way.id().slots().size(); i++) {
      Slot slot = way.id().slots().get(i);
      Span at = way.tree().slots().numbers().get(i).span();
      own.add(new Taken(slot, way, at));
      Optional<Taken> other = taken.getOrDefault(slot.number(), List.of()).stream().filter(t -> t.slot.overlaps(slot)).findFirst();
      if (free && slot.number() > 0 && other.isPresent()) {
        free = false;
        scope.report(
            Finding.error(Mistake.SLOT_TAKEN, "two breakers are in slot " + slot.number() + " of panel '" + way.id().panel() + "'")
                .at(at, name(way))
                .with(other.get().at, name(other.get().by) + " is in it already")
                .because("A slot takes one full-size breaker, or two half-size ones written " + slot.number() + "a and " + slot.number()
                    + "b.")
                .fix("move one of them to a free slot"));
      }
    }
    own.stream().filter(t -> t.slot.number() > 0).forEach(t -> taken.computeIfAbsent(t.slot.number(), n -> new ArrayList<>()).add(t));
  }

  private static String name(Way way) {
    return way.target().map(t -> "'" + t + "'").orElse("this breaker");
  }
}
