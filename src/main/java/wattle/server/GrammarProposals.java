package wattle.server;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.CompletionItemKind;
import wattle.compiler.Glossary;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.quantity.Units;
import wattle.rules.Kind;
import wattle.rules.Type;
import wattle.rules.Vocabulary;
import wattle.syntax.GrammarWords;
import wattle.syntax.Lexeme;
import wattle.syntax.NextTokens;

/** Every word of the notation that the grammar takes at a place, and for each name that it takes the names that mean something there. */
final class GrammarProposals {
  /** As cables are colored where no standard of color says otherwise; common practice. */
  private static final List<String> COLORS = List.of("black", "red", "blue");

  private static final List<String> OF_A_DEVICE = List.of("draws", "gives", "on", "off");

  private final Question question;
  private final CursorPlace place;
  private final Proposals proposals;
  private final NameProposals names;
  private final Library library;
  private final Map<String, List<Glossary.Entry>> words;

  GrammarProposals(Question question, CursorPlace place, Proposals proposals, NameProposals names) {
    this.question = question;
    this.place = place;
    this.proposals = proposals;
    this.names = names;
    this.library = question.analysis().compilation().library();
    this.words = Glossary.of(library).stream().collect(Collectors.groupingBy(Glossary.Entry::kind));
  }

  void propose(NextTokens next) {
    List<NextTokens.Next> all = next.all();
    all.stream().filter(NextTokens.Next::name).forEach(n -> name(n.rules()));
    if (all.stream().anyMatch(NextTokens.Next::unit)) {
      Units.spellings().stream().filter(u -> !u.isEmpty()).forEach(proposals::units);
    }
    all.stream().map(NextTokens.Next::literal).filter(l -> !l.isEmpty() && Character.isLetter(l.charAt(0)))
        .filter(l -> !(isEventBegun() && OF_A_DEVICE.contains(l)))
        .forEach(l -> proposals.add(l, meaning(l), CompletionItemKind.Keyword));
  }

  /** A device may be called as an event is, but {@code lose} alone begins the event. */
  private boolean isEventBegun() {
    return place.before().size() == 1 && place.block().equals("trial") && GrammarWords.of("event").contains(place.last());
  }

  private String meaning(String word) {
    return words.values().stream().flatMap(List::stream).filter(e -> e.word().equals(word)).map(Glossary.Entry::meaning).findFirst()
        .orElse("word of the notation");
  }

  private void name(List<String> rules) {
    boolean path = rules.get(0).equals("path");
    String rule = rules.get(path ? 1 : 0);
    switch (rule) {
      case "fact" -> facts(rules);
      case "serviceStatement" -> words(place.last().equals("earth") ? "grounding electrode" : "source of a service");
      case "panelItem" -> {
        if (path) {
          names.services();
          names.panels();
        } else {
          words("use of a panel");
        }
      }
      case "panelName" -> names.panels();
      case "panelSetting" -> {
        if (path) {
          names.rooms();
        } else {
          words(place.last().equals("earth") ? "grounding electrode" : "order of slots");
        }
      }
      case "branchItem" -> words("use of a branch");
      case "roomItem" -> {
        if (place.last().equals("is")) {
          words("kind of room");
        } else {
          words("fact of a room");
        }
      }
      case "slotItem" -> {
        if (place.last().equals("leg") || place.last().equals("+")) {
          legs();
        } else {
          names.targets();
        }
      }
      case "surroundings" -> {
        if (path) {
          names.raceways();
        } else {
          words("place of a run");
        }
      }
      case "raceSize" -> words("raceway");
      case "cabling" -> cables(false);
      case "conductor" -> cables(true);
      case "wiring" -> names.parameters();
      case "boxItem" -> words("trait of a box");
      case "deviceItem" -> device(path);
      case "placeItem" -> marks();
      case "place" -> {
        names.parameters();
        names.panels();
        names.devices();
      }
      case "conductorName" -> proposals.words("a hot of two", "other-hot");
      case "event" -> {
        if (List.of("lose", "transfer", "main", "breaker", "of", "move", "to").contains(place.last())) {
          return; // proposed already, of the one sort that means something there
        }
        names.branches();
        names.panels();
        names.devices();
      }
      case "measure" -> measures();
      case "subject" -> {
        names.branches();
        names.panels();
        names.services();
        names.rooms();
        names.devices();
      }
      case "expectation" -> names.trials();
      case "silence" -> library.rules().keySet().forEach(r -> proposals.add(r, "rule", CompletionItemKind.Event));
      case "useName" -> StandardLibrary.packNames()
          .forEach(n -> proposals.add(n, "pack of the standard library", CompletionItemKind.Module));
      case "placing" -> {
        if (place.last().equals("place")) {
          names.patterns();
        }
      }
      case "expression" -> {
        names.parameters();
        names.counters();
        names.constants();
        if (rules.contains("argument")) {
          names.panels();
          names.branches();
          library.parts().values().forEach(p -> proposals.add(p.name(), "kind of device", CompletionItemKind.Struct));
        }
      }
      case "ruleLine" -> {
        if (place.last().equals("each")) {
          for (Kind kind : Kind.values()) {
            proposals.add(kind.word(), kind.meaning(), CompletionItemKind.Class);
          }
        }
      }
      case "quality" -> quality();
      default -> {
        /* a name that is given here, or one that nobody can know */ }
    }
  }

  private void words(String kind) {
    words.getOrDefault(kind, List.of()).forEach(e -> proposals.add(e.word(), e.meaning(), CompletionItemKind.EnumMember));
  }

  private void facts(List<String> rules) {
    if (rules.contains("service")) {
      words("fact of a service");
    } else if (rules.contains("panel")) {
      words("fact of a panel");
    } else {
      words("fact of a dwelling");
    }
  }

  private void cables(boolean single) {
    library.cables().values().stream().filter(c -> c.single() == single)
        .forEach(c -> proposals.add(c.name(), c.label(), CompletionItemKind.Struct));
  }

  private void device(boolean path) {
    if (path) {
      names.devices();
    } else if (place.last().equals("at")) {
      words("place of a device");
    } else if (place.last().equals("on")) {
      marks();
    } else {
      if (place.last().equals(":")) {
        library.parts().values().forEach(p -> proposals.add(p.name(), "kind of device", CompletionItemKind.Struct));
      }
      words("trait of a device");
      words("figure of a device");
      words("trait of a box");
      // What is said may come before the kind, and a kind may go on over several words.
      library.parts().values().forEach(p -> proposals.add(rest(p.name()), "kind of device", CompletionItemKind.Struct));
      names.parameters();
    }
  }

  /** What is left of a kind of several words of which the first stand there. */
  private String rest(String kind) {
    List<String> written = place.before().stream().map(Lexeme::text).toList();
    for (int from = Math.max(0, written.size() - 3); from < written.size(); from++) {
      String begun = String.join(" ", written.subList(from, written.size())) + " ";
      if (kind.startsWith(begun)) {
        return kind.substring(begun.length());
      }
    }
    return kind;
  }

  private void legs() {
    Optional.ofNullable(question.analysis().house().panels().get(place.blockName())).map(Panel::legs).orElse(List.of())
        .forEach(leg -> proposals.add(leg.name(), "leg", CompletionItemKind.Constant));
  }

  private void marks() {
    for (Leg leg : Leg.values()) {
      proposals.add(leg.name(), "leg", CompletionItemKind.Constant);
    }
    COLORS.forEach(c -> proposals.add(c, "color of the hot", CompletionItemKind.Constant));
  }

  private void measures() {
    String written = place.before().stream().skip(1).map(Lexeme::text).collect(Collectors.joining(" "));
    for (Glossary.Entry measure : words.getOrDefault("measure", List.of())) {
      String word = measure.word().replace('-', ' ');
      if (written.isEmpty()) {
        proposals.add(word, measure.meaning(), CompletionItemKind.EnumMember);
      } else if (word.startsWith(written + " ")) {
        proposals.add(word.substring(written.length() + 1), measure.meaning(), CompletionItemKind.EnumMember);
      }
    }
  }

  /** What a rule speaks of: the thing it is for, the limits, and behind a dot what is known of a thing. */
  private void quality() {
    Map<String, Kind> things = place.things();
    things.forEach((name, kind) -> proposals.add(name, kind.meaning(), CompletionItemKind.Variable));
    proposals.words("a limit of the code", "limit");
  }

  /** Behind the dot after some words of a rule. */
  void properties(List<String> path) {
    if (path.get(0).equals("limit")) {
      library.limits().values().forEach(l -> proposals.add(l.name(), l.label(), CompletionItemKind.Constant));
      return;
    }
    Optional<Kind> kind = Optional.ofNullable(place.things().get(path.get(0)));
    for (String word : path.subList(1, path.size())) {
      kind = kind.flatMap(k -> Optional.ofNullable(Vocabulary.of(k).get(word)))
          .flatMap(p -> p.type() instanceof Type.Thing thing ? Optional.of(thing.kind()) : Optional.empty());
    }
    kind.ifPresent(k -> Vocabulary.of(k).values().forEach(p -> proposals.add(p.name(), p.meaning(), CompletionItemKind.Property)));
  }
}
