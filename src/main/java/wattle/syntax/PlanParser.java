package wattle.syntax;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.antlr.v4.runtime.CommonTokenStream;
import org.antlr.v4.runtime.ListTokenSource;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.PredictionMode;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleParser;
import wattle.syntax.grammar.WattleParser.ItemContext;
import wattle.syntax.grammar.WattleParser.PlanContext;

/**
 * Text to tree. The lexer's tokens are first put in order ({@link TokenRepair}: closing quotes and braces that are
 * missing, characters that mean nothing), so that the parser proper never meets an unbalanced block; then the grammar
 * reads them, and {@link LineRecovery} keeps each mistake in its own statement; then ANTLR's contexts become our small
 * tree and are let go.
 */
public final class PlanParser {
  /**
   * Characters that are read at a time. A long file is read in portions, so that all processors have their share and
   * what ANTLR made of a portion is let go before the memory is full of it.
   */
  private static final int PORTION = 1 << 16;

  private PlanParser() {}

  /** Reads a file; whatever is wrong in it, there is a tree of the rest. */
  public static Checked<PlanTree> parse(Source source) {
    return parse(source, PORTION);
  }

  static Checked<PlanTree> parse(Source source, int portion) {
    return source.text().length() < 2 * portion ? whole(source) : portions(source, TextParts.portions(source, portion));
  }

  private static Checked<PlanTree> portions(Source source, List<Span> portions) {
    List<Read> read = portions.parallelStream().map(PlanParser::portion).toList();
    return read.stream().anyMatch(r -> stopped(r.mistakes.first())) ? whole(source) : together(source, read).checked();
  }

  /** A stretch of a file as read, with what is wrong in it. */
  private record Read(PlanTree tree, Mistakes mistakes) {
    Checked<PlanTree> checked() {
      return new Checked<>(tree, mistakes.told(tree.source()));
    }
  }

  private static Read together(Source source, List<Read> read) {
    Mistakes mistakes = new Mistakes();
    List<Tree.Item> items = new ArrayList<>();
    Set<String> damagedWords = new HashSet<>();
    for (Read portion : read) {
      mistakes.addAll(portion.mistakes);
      items.addAll(portion.tree.items());
      damagedWords.addAll(portion.tree.damagedWords());
    }
    return new Read(new PlanTree(source, items, damagedWords), mistakes);
  }

  /** Whether there was so much wrong somewhere that only a reading of the whole can tell where it stops. */
  static boolean stopped(Collection<Finding> findings) {
    return findings.stream().anyMatch(f -> Stop.isCalled(f.rule()));
  }

  /** As one, so that it is known where to stop. */
  private static Checked<PlanTree> whole(Source source) {
    return portion(source.span(0, source.text().length())).checked();
  }

  private static Read portion(Span portion) {
    Source source = portion.source();
    Portion read = read(portion);
    if (!read.mistakes.first().isEmpty() && !stopped(read.mistakes.first())) {
      // A mistake is kept within the part in which it stands, so that what follows is read as it is where that part is not there.
      List<Span> parts = TextParts.parts(portion);
      if (parts.size() > 1) {
        return together(source, parts.stream().map(PlanParser::portion).toList());
      }
    }
    if (read.plan.isEmpty()) {
      return new Read(new PlanTree(source, List.of(), read.damagedWords), read.mistakes);
    }
    List<Tree.Item> items = Pieces.each(read.plan.get().item(), new ItemReader(new Pieces(read.spans)));
    return new Read(new PlanTree(source, items, read.damagedWords), read.mistakes);
  }

  /**
   * A portion as ANTLR read it.
   *
   * @param tokens in order, with those that the parser does not see, put in order where that was needed
   * @param plan absent where nesting is too deep to be read
   */
  record Portion(Spans spans, List<Token> tokens, Optional<PlanContext> plan, Mistakes mistakes, Set<String> damagedWords) {}

  /** Reads a text, or such a part of it as means the same wherever it stands. */
  static Portion read(Span portion) {
    Source source = portion.source();
    ConflictMarks.Read unmerged = ConflictMarks.in(portion);
    String text = unmerged.text();
    Spans spans = new Spans(portion, text);
    TokenRepair repair = new TokenRepair(spans);
    List<Token> tokens = repair.repair(PlanLexer.all(text, source.name()));
    Mistakes mistakes = new Mistakes();
    unmerged.findings().forEach(mistakes::add);
    mistakes.addAll(repair.mistakes());
    if (repair.tooDeep()) {
      return new Portion(spans, tokens, Optional.empty(), mistakes, repair.damagedWords());
    }
    WattleParser parser = new WattleParser(new CommonTokenStream(new ListTokenSource(tokens, source.name())));
    parser.removeErrorListeners();
    parser.getInterpreter().setPredictionMode(PredictionMode.LL);
    LineRecovery recovery = new LineRecovery(spans);
    parser.setErrorHandler(recovery);
    PlanContext plan = parser.plan();
    mistakes.addAll(recovery.mistakes());
    Doubled.in(plan, spans).forEach(mistakes::add);
    recovery.damagedWords().addAll(repair.damagedWords());
    return new Portion(spans, tokens, Optional.of(plan), mistakes, recovery.damagedWords());
  }

  /** Reads an item by its kind. */
  private record ItemReader(Pieces pieces) implements java.util.function.Function<ItemContext, Optional<Tree.Item>> {
    @Override
    public Optional<Tree.Item> apply(ItemContext c) {
      if (c.thing() != null) {
        return new ThingReader(pieces).apply(c.thing());
      }
      if (c.pattern() != null) {
        return new PatternReader(pieces).pattern(c.pattern());
      }
      if (c.overriding() != null) {
        return new PatternReader(pieces).overriding(c.overriding());
      }
      if (c.heading() != null) {
        return new HeadReader(pieces).heading(c.heading());
      }
      if (c.use() != null) {
        return new HeadReader(pieces).use(c.use());
      }
      return library(c);
    }

    private Optional<Tree.Item> library(ItemContext c) {
      LibraryReader library = new LibraryReader(pieces);
      if (c.ruleBlock() != null) {
        return new RuleReader(pieces).rule(c.ruleBlock());
      }
      if (c.pack() != null) {
        return library.pack(c.pack());
      }
      if (c.part() != null) {
        return library.part(c.part());
      }
      if (c.cable() != null) {
        return library.cable(c.cable());
      }
      if (c.table() != null) {
        return library.table(c.table());
      }
      if (c.limit() != null) {
        return library.limit(c.limit());
      }
      return Optional.empty(); // nothing could be read; the parser has said so
    }
  }
}
