package wattle.server;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import wattle.server.Named.Kind;
import wattle.syntax.Tree;

/** Every name that a plan gives, by where it is known: in the plan, or in one pattern. */
final class Declarations {
  private final Set<Named> declared = new HashSet<>();
  private final Map<String, Tree.Pattern> patterns = new HashMap<>();
  private final Map<String, List<Tree.Placing>> placings = new HashMap<>();
  private final Made made;

  /** Takes each name as it is given. */
  interface Made {
    void take(Named thing, Tree.Word word, Tree whole);
  }

  Declarations(List<Tree.Item> items, Made made) {
    this.made = made;
    items.forEach(item -> declare(item, ""));
  }

  boolean contains(Named thing) {
    return declared.contains(thing);
  }

  Optional<Tree.Pattern> pattern(String name) {
    return Optional.ofNullable(patterns.get(name));
  }

  /** The place line that gives a name in the plan or in a pattern; {@code flat3} is given by {@code flat{n}}. */
  Optional<Tree.Placing> placing(String word, String in) {
    List<Tree.Placing> there = placings.getOrDefault(in, List.of());
    return there.stream()
        .filter(p -> p.name().text().equals(word))
        .findFirst()
        .or(() -> there.stream().filter(p -> p.name().text().indexOf('{') >= 0 && filled(p).matcher(word).matches()).findFirst());
  }

  /** What the name of a placement may be with its holes filled: by numbers of its repetition, by anything else that is given. */
  private static Pattern filled(Tree.Placing placing) {
    String quoted = Pattern.quote(placing.name().text());
    String numbers = placing.repetition().map(r -> quoted.replace("{" + r.name() + "}", "\\E\\d+\\Q")).orElse(quoted);
    return Pattern.compile(numbers.replaceAll("\\{[^}]*\\}", "\\\\E[\\\\p{L}\\\\d_-]+\\\\Q"));
  }

  /** A thing of a name; in a pattern, what has the pattern's own name is what its placement is called by. */
  Named named(Kind kind, String name, String in) {
    return !in.isEmpty() && name.equals(in) ? new Named(Kind.PATTERN, in) : new Named(kind, name, in);
  }

  private void declare(Kind kind, Tree.Word word, Tree whole, String in) {
    take(named(kind, word.text(), in), word, whole);
  }

  private void take(Named thing, Tree.Word word, Tree whole) {
    declared.add(thing);
    made.take(thing, word, whole);
  }

  private void declare(Tree.Item item, String in) {
    if (item instanceof Tree.Branch t) {
      declare(Kind.BRANCH, t.name(), t, in);
    } else if (item instanceof Tree.Panel t) {
      declare(Kind.PANEL, t.name(), t, in);
      t.statements().stream().filter(Tree.Slot.class::isInstance).forEach(s -> variable(((Tree.Slot) s).repetition(), s, in));
    } else if (item instanceof Tree.Dwelling t) {
      t.name().ifPresent(name -> declare(Kind.DWELLING, name, t, in));
    } else if (item instanceof Tree.Service t) {
      declare(Kind.SERVICE, t.name(), t, in);
    } else if (item instanceof Tree.Raceway t) {
      declare(Kind.RACEWAY, t.name(), t, in);
    } else if (item instanceof Tree.Let t) {
      declare(Kind.CONSTANT, t.name(), t, in);
    } else if (item instanceof Tree.Trial t) {
      declare(Kind.TRIAL, t.name(), t, in);
    } else if (item instanceof Tree.Room t) {
      room(t, in);
    } else if (item instanceof Tree.Placing t) {
      declare(Kind.PLACEMENT, t.name(), t, in);
      placings.computeIfAbsent(in, p -> new ArrayList<>()).add(t);
      variable(t.repetition(), t, in);
    } else if (item instanceof Tree.Pattern t) {
      pattern(t);
    } else {
      ofLibrary(item);
    }
  }

  private void pattern(Tree.Pattern pattern) {
    String name = pattern.name().text();
    patterns.putIfAbsent(name, pattern);
    declare(Kind.PATTERN, pattern.name(), pattern, "");
    pattern.parameters().forEach(p -> declare(Kind.PARAMETER, p, p, name));
    pattern.items().forEach(item -> declare(item, name));
  }

  /** The name of a repetition is known in its own line alone. */
  private void variable(Optional<Tree.Repetition> repetition, Tree line, String in) {
    repetition.ifPresent(r -> declare(Kind.PARAMETER, r.name(), r, variableScope(r, in)));
  }

  static String variableScope(Tree.Repetition repetition, String in) {
    return in + "@" + System.identityHashCode(repetition.span().source()) + ":" + repetition.span().start();
  }

  private void room(Tree.Room room, String in) {
    declare(Kind.ROOM, room.name(), room, in);
    BiConsumer<Tree.Word, Tree> inside = (word, whole) -> take(new Named(Kind.DEVICE, room.name() + "." + word, in), word, whole);
    for (Tree.Box box : room.boxes()) {
      inside.accept(box.name(), box);
      box.devices().forEach(d -> inside.accept(d.name(), d));
    }
    room.devices().forEach(d -> inside.accept(d.name(), d));
  }

  private void ofLibrary(Tree.Item item) {
    if (item instanceof Tree.Part t && !t.name().isEmpty()) {
      String name = String.join(" ", t.name().stream().map(Tree.Word::text).toList());
      take(
          new Named(Kind.PART, name), new Tree.Word("", t.name().get(0).span().to(t.name().get(t.name().size() - 1).span())), t);
    } else if (item instanceof Tree.CableType t) {
      declare(Kind.CABLE, t.name(), t, "");
    } else if (item instanceof Tree.Table t) {
      declare(Kind.TABLE, t.name(), t, "");
    } else if (item instanceof Tree.Limit t) {
      declare(Kind.LIMIT, t.name(), t, "");
    } else if (item instanceof Tree.Pack t) {
      declare(Kind.PACK, t.name(), t, "");
    } else if (item instanceof Tree.Rule t) {
      declare(Kind.RULE, t.name(), t, "");
    }
  }
}
