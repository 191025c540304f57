package wattle.rules;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.ToDoubleBiFunction;
import wattle.model.Doubt;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/**
 * Gathers the properties of one kind of thing, typed. An empty value says that the plan does not tell.
 *
 * @param <T> the class of the things
 */
final class Properties<T> {
  /** Most properties of one kind of thing whose values are kept. */
  static final int MOST_KEPT = 8;

  /** What a sum of loads rests on. */
  static final Doubt[] LOADS = {Doubt.SERVICE, Doubt.SUPPLY, Doubt.SLOTS, Doubt.TARGET, Doubt.FED, Doubt.WAY, Doubt.CONTENTS, Doubt.KIT,
      Doubt.FIGURES, Doubt.BRANCHES, Doubt.ROOMS, Doubt.DEVICES};

  /**
   * What the loads of one branch rest on: what is said of that branch, its boxes and the rooms they are in. A mistake elsewhere
   * in the plan leaves them known.
   */
  static final Doubt[] LOADS_OF_BRANCH = {Doubt.SERVICE, Doubt.SUPPLY, Doubt.TARGET, Doubt.FED, Doubt.WAY, Doubt.CONTENTS, Doubt.KIT,
      Doubt.FIGURES};

  private final Class<T> type;
  private final Set<Doubt> usual;
  private final Map<String, Property> made = new LinkedHashMap<>();
  private String last = "";
  private int kept;

  /** @param usual the doubts that leave a property of such a thing not known, where the property says nothing else */
  Properties(Class<T> type, Doubt... usual) {
    this.type = type;
    this.usual = Set.of(usual);
  }

  // Each reader is one lambda: rules read properties millions of times, and none of the calls on the way can be compiled in.

  Properties<T> figure(String name, Dimension dimension, String meaning, BiFunction<Facts, T, Optional<Quantity>> read) {
    return add(name, new Type.Figure(dimension), meaning, (f, t) -> read.apply(f, type.cast(t)).orElse(null));
  }

  /** A figure that is always known, in a unit. */
  Properties<T> figure(String name, Unit unit, String meaning, ToDoubleBiFunction<Facts, T> read) {
    return add(name, new Type.Figure(unit.dimension()), meaning, (f, t) -> Quantity.of(read.applyAsDouble(f, type.cast(t)), unit));
  }

  Properties<T> number(String name, String meaning, ToDoubleBiFunction<Facts, T> read) {
    return figure(name, Units.ONE, meaning, read);
  }

  Properties<T> truth(String name, String meaning, BiFunction<Facts, T, Boolean> read) {
    return add(name, Type.TRUTH, meaning, (f, t) -> read.apply(f, type.cast(t)));
  }

  Properties<T> words(String name, String meaning, BiFunction<Facts, T, Optional<String>> read) {
    return add(name, Type.WORDS, meaning, (f, t) -> read.apply(f, type.cast(t)).orElse(null));
  }

  Properties<T> wordSet(String name, String meaning, BiFunction<Facts, T, ? extends Collection<String>> read) {
    return add(name, Type.WORD_SET, meaning, (f, t) -> read.apply(f, type.cast(t)));
  }

  Properties<T> size(String name, String meaning, BiFunction<Facts, T, Optional<WireSize>> read) {
    return add(name, Type.SIZE, meaning, (f, t) -> read.apply(f, type.cast(t)).orElse(null));
  }

  Properties<T> thing(String name, Kind kind, String meaning, BiFunction<Facts, T, ? extends Optional<?>> read) {
    return add(name, new Type.Thing(kind), meaning, (f, t) -> read.apply(f, type.cast(t)).orElse(null));
  }

  Properties<T> things(String name, Kind kind, String meaning, BiFunction<Facts, T, ? extends Collection<?>> read) {
    return add(name, new Type.Things(kind), meaning, (f, t) -> read.apply(f, type.cast(t)));
  }

  /** Has the values of the property that was added last kept: for those that cost much and are asked for often. */
  Properties<T> kept() {
    if (kept == MOST_KEPT) {
      throw new IllegalStateException("no room to keep " + last);
    }
    made.computeIfPresent(last,
        (name, p) -> new Property(name, p.type(), p.meaning(), p.read(), kept++, p.ofSort(), p.stated(), p.rests()));
    return this;
  }

  /** Says that the property that was added last is the same for all things of one sort, as {@link Kind#sortOf} has it. */
  Properties<T> ofSort() {
    made.computeIfPresent(last, (name, p) -> new Property(name, p.type(), p.meaning(), p.read(), p.keptAt(), true, p.stated(), p.rests()));
    return this;
  }

  /** Says which doubts leave the property that was added last not known. */
  Properties<T> rests(Doubt... doubts) {
    Set<Doubt> rests = Set.of(doubts);
    made.computeIfPresent(last,
        (name, p) -> new Property(name, p.type(), p.meaning(), p.read(), p.keptAt(), p.ofSort(), p.stated(), rests));
    return this;
  }

  /** Says that no doubt touches the property that was added last: a name, or a thing whose own properties may be in doubt. */
  Properties<T> sure() {
    return rests();
  }

  /**
   * Marks the property that was added last as one that a plan may leave out.
   *
   * @param how the words by which a plan states it
   */
  Properties<T> stated(String how) {
    return stated(how, how);
  }

  /** The same for a fact with a length, which a plan in feet states in other words than one in meters. */
  Properties<T> stated(String metric, String customary) {
    made.computeIfPresent(last,
        (name, p) -> new Property(name, p.type(), p.meaning(), p.read(), p.keptAt(), p.ofSort(),
            Optional.of(new Wording(metric, customary)), p.rests()));
    return this;
  }

  private Properties<T> add(String name, Type valueType, String meaning, Property.Reader read) {
    last = name;
    if (made.put(name, new Property(name, valueType, meaning, read, Property.NOT_KEPT, false, Optional.empty(), usual)) != null) {
      throw new IllegalStateException("two properties are called " + name);
    }
    return this;
  }

  Map<String, Property> made() {
    return made;
  }
}
