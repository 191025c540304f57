package wattle.syntax;

import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleParser.*;

/** Reads rules. Their sample plans stay text: they are read as plans of their own when the rule is tried. */
final class RuleReader {
  private final Pieces pieces;
  private final ClaimReader claims;

  RuleReader(Pieces pieces) {
    this.pieces = pieces;
    this.claims = new ClaimReader(pieces);
  }

  Optional<Tree.Item> rule(RuleBlockContext context) {
    List<RuleLineContext> lines = context.ruleLine();
    return pieces
        .word(context.word())
        .map(
            name -> new Tree.Rule(
                name,
                pieces.text(context.STRING()),
                first(lines, RuleScopeContext.class).flatMap(this::scope),
                first(lines, RuleWorkContext.class).map(this::work),
                Pieces.each(all(lines, RuleLetContext.class), this::let),
                Pieces.each(all(lines, RuleRequireContext.class), l -> claims.claim(l.claim())),
                first(lines, RuleOtherwiseContext.class).flatMap(l -> l.getChildCount() < 2 ? Optional.empty() : severity(l)),
                first(lines, RuleOtherwiseContext.class).flatMap(l -> words(l.words())),
                Pieces.each(all(lines, RuleMarkContext.class), this::mark),
                Pieces.each(all(lines, RuleNoteContext.class), l -> words(l.words())),
                Pieces.each(all(lines, RuleFixContext.class), this::fix),
                first(lines, RuleReasonContext.class).flatMap(l -> words(l.words())),
                Pieces.each(all(lines, RuleSourceContext.class), l -> pieces.citation(l.citation())),
                first(lines, RuleAcceptContext.class).flatMap(l -> sample(l.sample())),
                Pieces.each(all(lines, RuleExceptionContext.class), this::exception),
                first(lines, RuleRejectContext.class).map(this::reject),
                pieces.span(context)));
  }

  private static <T> List<T> all(List<RuleLineContext> lines, Class<T> kind) {
    return lines.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private static <T> Optional<T> first(List<RuleLineContext> lines, Class<T> kind) {
    return all(lines, kind).stream().findFirst();
  }

  private Optional<Tree.RuleScope> scope(RuleScopeContext line) {
    Optional<Tree.Word> kind = pieces.word(line.word());
    Optional<Tree.Word> name = pieces.word(line.mark());
    return kind.isPresent() && name.isPresent()
        ? Optional.of(new Tree.RuleScope(kind.get(), name.get(), claims.claim(line.claim()), pieces.span(line)))
        : Optional.empty();
  }

  private Tree.RuleWork work(RuleWorkContext line) {
    boolean all = line.getChildCount() > 1 && line.getChild(1).getText().equals("all");
    return new Tree.RuleWork(all, claims.claim(line.claim()), pieces.span(line));
  }

  private Optional<Tree.RuleLet> let(RuleLetContext line) {
    Optional<Tree.Claim> value = claims.claim(line.claim());
    return pieces.word(line.word()).flatMap(name -> value.map(v -> new Tree.RuleLet(name, v, pieces.span(line))));
  }

  private Optional<Tree.Word> severity(RuleOtherwiseContext line) {
    return line.getChild(1) instanceof org.antlr.v4.runtime.tree.TerminalNode node ? pieces.word(node) : Optional.empty();
  }

  private Optional<Tree.RuleMark> mark(RuleMarkContext line) {
    return claims.path(line.quality()).map(p -> new Tree.RuleMark(p, pieces.text(line.STRING()), pieces.span(line)));
  }

  private Optional<Tree.RuleFix> fix(RuleFixContext line) {
    return words(line.words())
        .map(order -> new Tree.RuleFix(order, Pieces.each(line.ruleEdit(), this::edit), pieces.span(line)));
  }

  private Optional<Tree.RuleEdit> edit(RuleEditContext edit) {
    Optional<Tree.Path> place = claims.path(edit.quality());
    Optional<Tree.Text> text = pieces.text(edit.STRING());
    Optional<Tree.EditManner> manner = Tree.EditManner.of(edit.getChildCount() > 1 ? edit.getChild(1).getText() : "");
    return place.isPresent() && text.isPresent() && manner.isPresent()
        ? Optional.of(new Tree.RuleEdit(place.get(), manner.get(), text.get(), pieces.span(edit)))
        : Optional.empty(); // the parser has said what is missing
  }

  private Optional<Tree.Text> words(WordsContext context) {
    if (context == null || context.STRING().isEmpty()) {
      return Optional.empty();
    }
    List<String> parts = context.STRING().stream().map(s -> pieces.text(s).orElseThrow().value()).toList();
    return Optional.of(new Tree.Text(String.join(" ", parts), pieces.span(context)));
  }

  private Optional<Tree.Text> sample(SampleContext context) {
    if (context == null) {
      return Optional.empty();
    }
    Span whole = pieces.span((ParserRuleContext) context);
    String text = whole.text();
    if (text.length() < 2 || !text.endsWith("}")) {
      return Optional.empty();
    }
    Span inner = whole.source().span(whole.start() + 1, whole.end() - 1);
    return Optional.of(new Tree.Text(inner.text(), inner));
  }

  private Optional<Tree.RuleException> exception(RuleExceptionContext line) {
    return words(line.words())
        .map(article -> new Tree.RuleException(Pieces.hasToken(line, "no"), article, sample(line.sample()), pieces.span(line)));
  }

  private Tree.RuleReject reject(RuleRejectContext line) {
    Optional<Tree.Text> old = line.STRING().isEmpty() ? Optional.empty() : pieces.text(line.STRING(0));
    Optional<Tree.Text> by = line.STRING().size() < 2 ? Optional.empty() : pieces.text(line.STRING(1));
    return new Tree.RuleReject(sample(line.sample()), old, by, pieces.span(line));
  }
}
