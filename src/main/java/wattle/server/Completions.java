package wattle.server;

import java.util.List;
import java.util.Set;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.Position;
import wattle.library.StandardLibrary;
import wattle.quantity.Units;
import wattle.syntax.Lexeme;
import wattle.syntax.NextTokens;
import wattle.syntax.Tree;

/** What may be written at a place. Each kind of block has its own class; what stands between blocks is here. */
final class Completions {
  private final Question question;
  private final CursorPlace place;
  private final Proposals proposals;
  private final NameProposals names;

  private Completions(Question question, CursorPlace place) {
    this.question = question;
    this.place = place;
    this.proposals = new Proposals(question.lines().range(place.start(), place.cursor()));
    this.names = NameProposals.at(question, place.cursor(), proposals);
  }

  static List<CompletionItem> at(Question question, Position position) {
    int cursor = question.offset(position);
    Completions completions = new Completions(question, CursorPlace.at(question, cursor));
    completions.propose();
    return completions.proposals.items();
  }

  private void propose() {
    if (place.lastLexeme().filter(l -> l.kind() == Lexeme.Kind.TEXT).isPresent()
        && place.cursor() < place.lastLexeme().get().span().end()) {
      return; // inside quotes
    }
    if (place.comment()) {
      return;
    }
    GrammarProposals grammar = new GrammarProposals(question, place, proposals, names);
    if (!place.pathBefore().isEmpty()) {
      names.inPath(place.pathBefore());
      grammar.properties(place.pathBefore());
      return;
    }
    known();
    NextTokens next = NextTokens.after(place.read());
    if (!next.isDead()) {
      proposals.keep(next::takes);
      grammar.propose(next);
      proposals.keep(next::takes);
    }
  }

  /** What is known of the house at this place, the likeliest first. */
  private void known() {
    switch (place.block()) {
      case "", "pattern" -> between();
      case "panel" -> new PanelProposals(question, place, proposals).propose();
      case "branch" -> new BranchProposals(question, place, proposals, names).propose();
      case "room", "box" -> new RoomProposals(question, place, proposals, names).propose();
      case "trial" -> trial();
      case "service" -> service();
      case "dwelling" -> dwelling();
      default -> units();
    }
  }

  private void between() {
    switch (place.first()) {
      case "" ->
        proposals.words(
            "starts a statement", "branch", "room", "panel", "trial", "expect", "let", "use", "service", "raceway",
            "silence", "dwelling", "pattern", "place", "override", "plan");
      case "use" -> use();
      case "branch" -> new BranchProposals(question, place, proposals, names).head();
      case "panel" -> new PanelProposals(question, place, proposals).head();
      case "room" -> proposals.words("what kind of room", "is");
      case "expect" -> expectation();
      case "silence" -> silence();
      case "let" -> units();
      case "place" -> place();
      default -> units();
    }
  }

  private void place() {
    if (place.before().size() == 1) {
      question.analysis().items().stream()
          .filter(Tree.Pattern.class::isInstance)
          .map(Tree.Pattern.class::cast)
          .forEach(p -> proposals.add(p.name().text(), PatternPages.heading(p), CompletionItemKind.Class));
    } else if (place.last().equals("by")) {
      new CableProposals(question.analysis(), proposals).types();
    } else if (place.last().equals("(") || place.last().equals(",")) {
      names.parameters();
      proposals.words("a cable", "by");
    } else {
      proposals.words("what it is called, and how many", "as", "for", "from", "to");
    }
  }

  private void use() {
    if (place.before().size() == 1) {
      proposals.words("what is used", "code", "parts", "rules");
      Plans.plansIn(question.file().getParent()).stream()
          .filter(f -> !question.analysis().files().containsKey(f))
          .forEach(f -> proposals.add("\"" + f.getFileName() + "\"", "file beside this one", CompletionItemKind.File));
    } else {
      StandardLibrary.packNames().forEach(n -> proposals.add(n, "pack of the standard library", CompletionItemKind.Module));
    }
  }

  private void expectation() {
    switch (place.last()) {
      case "of", "at" -> {
        names.branches();
        names.panels();
        names.services();
        names.devices();
      }
      case "in" -> names.trials();
      case "is" -> proposals.words("what it must be", "at most", "at least");
      default -> {
        if (place.isAfterNumber()) {
          proposals.units("A", "V", "W", "kW", "VA", "%", "ohm", "kA");
        } else if (place.before().stream().noneMatch(l -> l.text().equals("is"))) {
          proposals.words("of what, and what it must be", "neutral", "of", "at", "is");
        } else {
          proposals.words("how near, and when", "within", "in");
        }
      }
    }
  }

  private void silence() {
    if (place.before().size() == 1) {
      question.analysis().compilation().findings().stream()
          .map(f -> f.rule())
          .distinct()
          .forEach(r -> proposals.add(r, "finds something in this plan", CompletionItemKind.Event));
    } else if (place.last().equals("at")) {
      names.branches();
      names.panels();
      names.devices();
    } else {
      proposals.words("where, and why", "at", "because");
    }
  }

  private void trial() {
    switch (place.last()) {
      case "" -> {
        proposals.words("what is so in this trial", "open", "loosen", "lift", "fault", "move", "swap", "lose", "transfer");
        names.devices();
      }
      case "of", "move" -> names.branches();
      case "at" -> names.devices();
      case "lose" -> names.services();
      case "to" -> other();
      case "transfer", "main" -> names.panels();
      case "open", "loosen", "fault" ->
        proposals.words("a conductor", "neutral", "hot", "ground", "other-hot", "breaker", "service neutral", "main");
      case "breaker" -> names.panels();
      default -> {
        if (place.isAfterNumber()) {
          proposals.units("A", "W", "VA", "kW", "ohm");
        } else {
          proposals.words("what it does", "draws", "gives", "on", "off", "of", "at", "by", "to");
        }
      }
    }
  }

  /** Behind {@code to}: what a panel is transferred to, or the other conductor of a fault. */
  private void other() {
    switch (place.lastOf(Set.of("transfer", "fault", "move"))) {
      case "transfer" -> {
        names.sources();
        proposals.words("position of a transfer switch", "utility", "off");
      }
      case "fault" -> proposals.words("a conductor", "neutral", "hot", "ground", "other-hot");
      default -> {
        /* a free slot of a panel that is not named here */ }
    }
  }

  private void service() {
    if (place.isAtStart()) {
      proposals.words("of a service", "source", "run", "earth");
    } else if (place.last().equals("source")) {
      proposals.words("kind of source", "transformer", "available");
    } else {
      units();
    }
  }

  private void dwelling() {
    if (place.isAfterNumber()) {
      proposals.units("m2", "ft2");
    } else {
      proposals.words("of a dwelling", "floor-area", "storeys");
    }
  }

  private void units() {
    if (place.isAfterNumber()) {
      proposals.units(Units.spellings().toArray(String[]::new));
    }
  }
}
