package wattle.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.model.Breaker;
import wattle.model.Wiring;
import wattle.syntax.Tree;

/**
 * One change that a fix of a rule makes in the text.
 *
 * @param thing whose statement is changed
 * @param value what takes another value; absent where a wiring is written anew, or where words are put in or taken out
 * @param text what is written, put in or taken out
 */
record RuleEdit(Term thing, Optional<Stated> value, Tree.EditManner manner, Template text) {
  private static final Set<Kind> TAKES_WORDS = Set.of(Kind.BREAKER, Kind.DEVICE, Kind.BOX, Kind.RUN);

  /** A value that may stand in a statement, by the name that rules have for it. */
  record Stated(String name, Term term) {}

  static Optional<RuleEdit> check(Tree.RuleEdit tree, PathChecker paths, Names names, Consumer<Finding> findings) {
    List<String> words = tree.place().words().stream().map(Tree.Word::text).toList();
    Optional<Typed> whole = paths.check(words, tree.place().span(), names);
    Optional<Template> text = Template.check(tree.text(), paths, names, findings);
    if (whole.isEmpty() || text.isEmpty()) {
      return Optional.empty();
    }
    boolean isThing = whole.get().type() instanceof Type.Thing;
    boolean fits = switch (tree.manner()) {
      case BECOMES -> words.size() > 1 && isWritten(whole.get().type());
      case WITH -> whole.get().type() instanceof Type.Thing t && TAKES_WORDS.contains(t.kind());
      case WITHOUT -> isThing;
    };
    if (!fits) {
      findings.accept(
          Finding.error("rule-edit-unfit", "no edit can change " + whole.get().type().text() + " so")
              .at(tree.place().span(), "a figure or word for becomes; a breaker, device, box or run for with; a thing for without")
              .build());
      return Optional.empty();
    }
    if (isThing) {
      return Optional.of(new RuleEdit(whole.get().term(), Optional.empty(), tree.manner(), text.get()));
    }
    Stated value = new Stated(words.get(words.size() - 1), whole.get().term());
    return paths
        .check(words.subList(0, words.size() - 1), tree.place().span(), names)
        .map(owner -> new RuleEdit(owner.term(), Optional.of(value), tree.manner(), text.get()));
  }

  private static boolean isWritten(Type type) {
    return type instanceof Type.Figure || type instanceof Type.Words || type instanceof Type.Size
        || type instanceof Type.Thing t && t.kind() == Kind.WIRING;
  }

  /** The edit; absent where the statement does not have what it would change, or has already what it would put in. */
  Optional<Edit> make(Facts facts, Object[] named) {
    Object owner = thing.of(facts, named);
    Optional<String> words = text.filled(facts, named);
    if (owner == null || words.isEmpty()) {
      return Optional.empty();
    }
    if (manner == Tree.EditManner.WITH && owner instanceof Breaker b && b.device() == Breaker.Device.FUSE) {
      return Optional.empty(); // a fuse has none of the protections that a breaker may have
    }
    if (manner == Tree.EditManner.WITH) {
      return Statement.of(owner, "").flatMap(s -> s.with(words.get()));
    }
    if (manner == Tree.EditManner.WITHOUT) {
      return Statement.of(owner, "").flatMap(s -> s.without(words.get()));
    }
    if (value.isEmpty()) {
      return Optional.of(new Edit(((Wiring) owner).origin().whole(), words.get()));
    }
    Object now = value.get().term.of(facts, named);
    return now == null
        ? Optional.empty()
        : Statement.of(owner, value.get().name).flatMap(s -> s.placeOf(now)).map(place -> new Edit(place, words.get()));
  }
}
