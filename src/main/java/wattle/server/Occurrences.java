package wattle.server;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import wattle.finding.Span;
import wattle.model.Device;
import wattle.server.Named.Kind;
import wattle.syntax.Tree;

/** Every place in a plan where a name stands, by the rules that the binder reads names by. */
final class Occurrences {
  private final List<Occurrence> found = new ArrayList<>();
  private final Set<Named> declared = new HashSet<>();
  private final Analysis analysis;

  private Occurrences(Analysis analysis) {
    this.analysis = analysis;
  }

  /** In all files of a plan, in the order of the text within each file. */
  static List<Occurrence> of(Analysis analysis) {
    Occurrences occurrences = new Occurrences(analysis);
    List<Tree.Item> items = analysis.items();
    items.forEach(occurrences::declare);
    TreeWalk walk = new TreeWalk();
    for (Tree.Item item : items) {
      walk.each(item, node -> occurrences.refer(item, node));
    }
    return occurrences.found;
  }

  private void declare(Tree.Item item) {
    if (item instanceof Tree.Branch t) {
      declare(Kind.BRANCH, t.name().text(), t.name(), t.span());
    } else if (item instanceof Tree.Panel t) {
      declare(Kind.PANEL, t.name().text(), t.name(), t.span());
    } else if (item instanceof Tree.Service t) {
      declare(Kind.SERVICE, t.name().text(), t.name(), t.span());
    } else if (item instanceof Tree.Raceway t) {
      declare(Kind.RACEWAY, t.name().text(), t.name(), t.span());
    } else if (item instanceof Tree.Let t) {
      declare(Kind.CONSTANT, t.name().text(), t.name(), t.span());
    } else if (item instanceof Tree.Trial t) {
      declare(Kind.TRIAL, t.name().text(), t.name(), t.span());
    } else if (item instanceof Tree.Room t) {
      declareRoom(t);
    } else {
      declareOfLibrary(item);
    }
  }

  private void declareRoom(Tree.Room room) {
    declare(Kind.ROOM, room.name().text(), room.name(), room.span());
    Consumer<Tree.Device> device = d -> declare(Kind.DEVICE, room.name() + "." + d.name(), d.name(), d.span());
    for (Tree.Box box : room.boxes()) {
      declare(Kind.DEVICE, room.name() + "." + box.name(), box.name(), box.span());
      box.devices().forEach(device);
    }
    room.devices().forEach(device);
  }

  private void declareOfLibrary(Tree.Item item) {
    if (item instanceof Tree.Part t && !t.name().isEmpty()) {
      Span words = t.name().get(0).span().to(t.name().get(t.name().size() - 1).span());
      declare(Kind.PART, String.join(" ", t.name().stream().map(Tree.Word::text).toList()), new Tree.Word("", words), t.span());
    } else if (item instanceof Tree.CableType t) {
      declare(Kind.CABLE, t.name().text(), t.name(), t.span());
    } else if (item instanceof Tree.Table t) {
      declare(Kind.TABLE, t.name().text(), t.name(), t.span());
    } else if (item instanceof Tree.Limit t) {
      declare(Kind.LIMIT, t.name().text(), t.name(), t.span());
    } else if (item instanceof Tree.Pack t) {
      declare(Kind.PACK, t.name().text(), t.name(), t.span());
    } else if (item instanceof Tree.Rule t) {
      declare(Kind.RULE, t.name().text(), t.name(), t.span());
    }
  }

  private void declare(Kind kind, String name, Tree.Word word, Span whole) {
    Named thing = new Named(kind, name);
    declared.add(thing);
    found.add(new Occurrence(thing, analysis.placed(word.span()), true, analysis.placed(whole)));
  }

  private void refer(Tree.Item item, Tree node) {
    if (node instanceof Tree.Place t) {
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
    } else if (node instanceof Tree.Conductor t) {
      t.insulation().ifPresent(w -> add(Kind.CABLE, w.text(), w.span()));
    } else if (node instanceof Tree.Reference t) {
      first(t.path().first(), Kind.CONSTANT);
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

  /** A path of one word is a thing of one of the kinds; of two or more, a room and a box or device in it. */
  private void path(Tree.Path path, Kind... alone) {
    Tree.Word first = path.first();
    if (path.words().size() == 1) {
      first(first, alone);
      return;
    }
    first(first, Kind.ROOM);
    Tree.Word second = path.words().get(1);
    addIfDeclared(Kind.DEVICE, first + "." + second, second.span());
  }

  private void device(Tree.Device device, String room) {
    for (Tree.Path control : device.controls()) {
      // Within a room its own devices are called by one word; a second word may then be a half.
      if (!addIfDeclared(Kind.DEVICE, room + "." + control.first(), control.first().span())) {
        path(control);
      }
    }
    Optional.ofNullable(analysis.house().devices().get(room + "." + device.name()))
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

  private void first(Tree.Word word, Kind... kinds) {
    for (Kind kind : kinds) {
      if (addIfDeclared(kind, word.text(), word.span())) {
        return;
      }
    }
  }

  private boolean addIfDeclared(Kind kind, String name, Span span) {
    if (!declared.contains(new Named(kind, name))) {
      return false;
    }
    add(kind, name, span);
    return true;
  }

  private void add(Kind kind, String name, Span span) {
    found.add(Occurrence.of(new Named(kind, name), analysis.placed(span)));
  }
}
