package wattle.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import wattle.finding.Span;
import wattle.server.Named.Kind;
import wattle.syntax.Tree;

/**
 * What the words of a path name, by the rules that the binder reads names by: a room and what is in it, or placements and
 * what is in the last of them. In a pattern its own names come before those of the plan.
 */
final class PathNames {
  private final Declarations declared;
  private final BiConsumer<Named, Span> found;

  PathNames(Declarations declared, BiConsumer<Named, Span> found) {
    this.declared = declared;
    this.found = found;
  }

  /** A word that may hold dots. */
  static List<Tree.Word> words(Tree.Word dotted) {
    if (dotted.text().indexOf('.') < 0 || !dotted.text().equals(dotted.span().text())) {
      return List.of(dotted);
    }
    List<Tree.Word> words = new ArrayList<>();
    int at = dotted.span().start();
    for (String word : dotted.text().split("\\.")) {
      words.add(new Tree.Word(word, dotted.span().source().span(at, at + word.length())));
      at += word.length() + 1;
    }
    return words;
  }

  /**
   * Tells what each word names.
   *
   * @param in the pattern that it stands in; empty in the plan
   * @param alone what a word by itself may name
   */
  void of(List<Tree.Word> words, String in, Kind... alone) {
    if (!named(words, in, alone) && !in.isEmpty()) {
      named(words, "", alone);
    }
  }

  private boolean named(List<Tree.Word> words, String in, Kind... alone) {
    Tree.Word first = words.get(0);
    if (words.size() == 1) {
      for (Kind kind : alone) {
        if (add(declared.named(kind, first.text(), in), first.span())) {
          return true;
        }
      }
      return placement(words, in);
    }
    if (placement(words, in)) {
      return true;
    }
    boolean room = add(declared.named(Kind.ROOM, first.text(), in), first.span());
    return add(new Named(Kind.DEVICE, first + "." + words.get(1), in), words.get(1).span()) || room;
  }

  private boolean placement(List<Tree.Word> words, String in) {
    Optional<Tree.Placing> placing = declared.placing(words.get(0).text(), in);
    if (placing.isEmpty()) {
      return false;
    }
    found.accept(new Named(Kind.PLACEMENT, placing.get().name().text(), in), words.get(0).span());
    if (words.size() > 1) {
      declared.pattern(placing.get().pattern().text()).ifPresent(p -> inside(words.subList(1, words.size()), p.name().text()));
    }
    return true;
  }

  /** What is in a placement: a thing of its pattern, or what is in the room that has the pattern's own name. */
  private void inside(List<Tree.Word> words, String pattern) {
    if (add(new Named(Kind.DEVICE, pattern + "." + words.get(0), pattern), words.get(0).span())) {
      return;
    }
    named(words, pattern, Kind.BRANCH, Kind.PANEL, Kind.ROOM, Kind.TRIAL, Kind.CONSTANT, Kind.RACEWAY, Kind.SERVICE);
  }

  boolean add(Named thing, Span span) {
    if (!declared.contains(thing)) {
      return false;
    }
    found.accept(thing, span);
    return true;
  }
}
