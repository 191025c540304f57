package wattle.server;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wattle.finding.Span;
import wattle.model.Device;
import wattle.server.Named.Kind;
import wattle.syntax.Tree;

/** Every place in a plan where a name stands, by the rules that the binder reads names by. */
final class Occurrences {
  private static final Pattern HOLE = Pattern.compile("\\{([\\p{L}_][\\p{L}_0-9]*(?:-[\\p{L}_0-9]+)*)\\}");

  private final Set<Occurrence> found = new LinkedHashSet<>();
  private final Analysis analysis;
  private final Declarations declared;
  private final PathNames paths;
  private String in = "";
  private List<Tree.Repetition> repetitions = List.of();
  private List<Tree> repeated = List.of();

  private Occurrences(Analysis analysis, List<Tree.Item> items) {
    this.analysis = analysis;
    this.declared = new Declarations(
        items,
        (thing, word, whole) -> found.add(new Occurrence(thing, analysis.placed(word.span()), true, analysis.placed(whole.span()))));
    this.paths = new PathNames(declared, (thing, span) -> found.add(Occurrence.of(thing, analysis.placed(span))));
  }

  /** In all files of a plan, in the order of the text within each file. */
  static List<Occurrence> of(Analysis analysis) {
    List<Tree.Item> items = analysis.items();
    Occurrences occurrences = new Occurrences(analysis, items);
    TreeWalk walk = new TreeWalk();
    items.forEach(item -> occurrences.refer(item, walk));
    return List.copyOf(occurrences.found);
  }

  private void refer(Tree.Item item, TreeWalk walk) {
    if (item instanceof Tree.Pattern pattern) {
      in = pattern.name().text();
      pattern.items().forEach(inside -> refer(inside, walk));
      in = "";
      return;
    }
    if (item instanceof Tree.Overriding own) {
      in = analysis.house().placements().getOrDefault(own.placement().text(), "");
      own.items().forEach(inside -> refer(inside, walk));
      in = "";
      return;
    }
    repetitions = new ArrayList<>();
    repeated = new ArrayList<>();
    if (item instanceof Tree.Placing placing) {
      repeat(placing.repetition(), placing);
    } else if (item instanceof Tree.Panel panel) {
      panel.statements().stream().filter(Tree.Slot.class::isInstance).forEach(s -> repeat(((Tree.Slot) s).repetition(), s));
    }
    walk.each(item, node -> refer(item, node));
  }

  private void repeat(Optional<Tree.Repetition> repetition, Tree line) {
    repetition.ifPresent(
        r -> {
          repetitions.add(r);
          repeated.add(line);
        });
  }

  /** The parameter that a word is where it stands: of its line's repetition, or of the pattern. */
  private Optional<Named> parameter(String word, Span span) {
    for (int i = 0; i < repetitions.size(); i++) {
      Span line = repeated.get(i).span();
      if (repetitions.get(i).name().text().equals(word) && line.source() == span.source() && line.start() <= span.start()
          && span.end() <= line.end()) {
        return Optional.of(new Named(Kind.PARAMETER, word, Declarations.variableScope(repetitions.get(i), in)));
      }
    }
    return Optional.of(new Named(Kind.PARAMETER, word, in)).filter(declared::contains);
  }

  private void holes(Span span) {
    Matcher hole = HOLE.matcher(span.text());
    while (hole.find()) {
      Span at = span.source().span(span.start() + hole.start(1), span.start() + hole.end(1));
      parameter(hole.group(1), at).ifPresent(p -> paths.add(p, at));
    }
  }

  private void refer(Tree.Item item, Tree node) {
    if (node instanceof Tree.Word t && t.text().indexOf('{') >= 0) {
      holes(t.span());
    } else if (node instanceof Tree.Text t && t.value().indexOf('{') >= 0) {
      holes(t.span());
    } else if (node instanceof Tree.Placing t) {
      paths.add(new Named(Kind.PATTERN, t.pattern().text()), t.pattern().span());
    } else if (node instanceof Tree.Argument t && t.figure().isPresent() && t.figure().get() instanceof Tree.Reference name) {
      int known = found.size();
      path(name.path(), Kind.CONSTANT, Kind.PANEL, Kind.BRANCH, Kind.RACEWAY, Kind.SERVICE, Kind.ROOM);
      // What is no name of the plan may be the kind of a device.
      if (found.size() == known && analysis.compilation().library().part(name.path().text()).isPresent()) {
        add(Kind.PART, name.path().text(), name.path().span());
      }
    } else if (node instanceof Tree.Dwelling t) {
      t.panels().forEach(w -> first(w, Kind.PANEL));
    } else if (node instanceof Tree.Place t) {
      path(t.path(), Kind.PANEL);
    } else if (node instanceof Tree.Slot t) {
      t.words().forEach(w -> first(w, Kind.BRANCH, Kind.PANEL));
    } else if (node instanceof Tree.Feed t) {
      first(t.from(), Kind.PANEL, Kind.SERVICE);
    } else if (node instanceof Tree.Device t && item instanceof Tree.Room room) {
      device(t, room.name().text());
    } else if (node instanceof Tree.Through t) {
      t.raceways().forEach(w -> first(w, Kind.RACEWAY));
    } else if (node instanceof Tree.CableWiring t) {
      t.type().ifPresent(w -> add(Kind.CABLE, w.text(), w.span()));
    } else if (node instanceof Tree.NamedWiring t) {
      parameter(t.name().text(), t.name().span()).ifPresent(p -> paths.add(p, t.name().span()));
    } else if (node instanceof Tree.Conductor t) {
      t.insulation().ifPresent(w -> add(Kind.CABLE, w.text(), w.span()));
    } else if (node instanceof Tree.Reference t) {
      path(t.path(), Kind.CONSTANT);
    } else if (node instanceof Tree.Use t && !t.quoted()) {
      add(Kind.PACK, t.target().text(), t.target().span());
    } else {
      referOfTrials(node);
    }
  }

  private void referOfTrials(Tree node) {
    if (node instanceof Tree.Subject t) {
      path(t.path(), Kind.BRANCH, Kind.PANEL, Kind.ROOM, Kind.SERVICE);
    } else if (node instanceof Tree.OpenConductor t) {
      path(t.of(), Kind.BRANCH);
      t.at().ifPresent(p -> path(p, Kind.PANEL));
    } else if (node instanceof Tree.OpenBreaker t) {
      first(t.panel(), Kind.PANEL);
    } else if (node instanceof Tree.Loosen t) {
      path(t.at(), Kind.PANEL);
    } else if (node instanceof Tree.Lift t) {
      path(t.at(), Kind.PANEL);
    } else if (node instanceof Tree.Fault t) {
      path(t.at(), Kind.PANEL);
    } else if (node instanceof Tree.Swap t) {
      path(t.at(), Kind.PANEL);
    } else if (node instanceof Tree.Move t) {
      first(t.branch(), Kind.BRANCH);
    } else if (node instanceof Tree.OpenMain t) {
      first(t.panel(), Kind.PANEL);
    } else if (node instanceof Tree.Lose t) {
      first(t.service(), Kind.SERVICE);
    } else if (node instanceof Tree.Transfer t) {
      first(t.panel(), Kind.PANEL);
      path(t.position());
    } else if (node instanceof Tree.Give t) {
      path(t.path());
    } else if (node instanceof Tree.Draw t) {
      path(t.path());
    } else if (node instanceof Tree.Turn t) {
      path(t.path());
    } else if (node instanceof Tree.Expectation t) {
      t.trial().ifPresent(w -> first(w, Kind.TRIAL));
    } else if (node instanceof Tree.Silence t) {
      add(Kind.RULE, t.rule().text(), t.rule().span());
    }
  }

  private void path(Tree.Path path, Kind... alone) {
    words(path.words(), alone);
  }

  private void first(Tree.Word word, Kind... kinds) {
    words(PathNames.words(word), kinds);
  }

  private void words(List<Tree.Word> words, Kind... alone) {
    Optional<Named> parameter = parameter(words.get(0).text(), words.get(0).span());
    if (parameter.isPresent()) {
      paths.add(parameter.get(), words.get(0).span());
    } else {
      paths.of(words, in, alone);
    }
  }

  private void device(Tree.Device device, String room) {
    device.words().forEach(w -> parameter(w.text(), w.span()).ifPresent(p -> paths.add(p, w.span())));
    for (Tree.Path control : device.controls()) {
      // Within a room its own devices are called by one word; a second word may then be a half.
      if (!paths.add(new Named(Kind.DEVICE, room + "." + control.first(), in), control.first().span())) {
        path(control);
      }
    }
    analysis
        .inHouse(new Named(Kind.DEVICE, room + "." + device.name(), in))
        .flatMap(name -> Optional.ofNullable(analysis.house().devices().get(name)))
        .map(Device::kind)
        .ifPresent(kind -> part(device.words(), kind.name()));
  }

  private void part(List<Tree.Word> words, String name) {
    for (int from = 0; from < words.size(); from++) {
      String joined = "";
      for (int to = from; to < words.size() && joined.length() < name.length(); to++) {
        joined += (joined.isEmpty() ? "" : " ") + words.get(to);
        if (joined.equals(name)) {
          add(Kind.PART, name, words.get(from).span().to(words.get(to).span()));
          return;
        }
      }
    }
  }

  private void add(Kind kind, String name, Span span) {
    found.add(Occurrence.of(new Named(kind, name), analysis.placed(span)));
  }
}
