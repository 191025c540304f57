package wattle.syntax;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
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
  /** Most findings that one file may give here; a file that is no plan at all should not fill the screen. */
  static final int MOST_FINDINGS = 100;

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
    Checked<PlanTree> read = together(source, portions.parallelStream().map(PlanParser::portion).toList());
    return stopped(read.findings()) ? whole(source) : read;
  }

  private static Checked<PlanTree> together(Source source, List<Checked<PlanTree>> read) {
    List<Finding> findings = new ArrayList<>();
    List<Tree.Item> items = new ArrayList<>();
    Set<String> damagedWords = new HashSet<>();
    for (Checked<PlanTree> portion : read) {
      findings.addAll(portion.findings());
      items.addAll(portion.value().items());
      damagedWords.addAll(portion.value().damagedWords());
    }
    return new Checked<>(new PlanTree(source, items, damagedWords), bounded(source, findings));
  }

  /** Whether there was so much wrong somewhere that only a reading of the whole can tell where it stops. */
  static boolean stopped(List<Finding> findings) {
    return findings.stream().anyMatch(f -> Stop.isCalled(f.rule()));
  }

  /** As one, so that it is known where to stop. */
  private static Checked<PlanTree> whole(Source source) {
    return portion(source.span(0, source.text().length()));
  }

  private static Checked<PlanTree> portion(Span portion) {
    Source source = portion.source();
    Portion read = read(portion);
    if (!read.findings.isEmpty() && !stopped(read.findings)) {
      // A mistake is kept within the part in which it stands, so that what follows is read as it is where that part is not there.
      List<Span> parts = TextParts.parts(portion);
      if (parts.size() > 1) {
        return together(source, parts.stream().map(PlanParser::portion).toList());
      }
    }
    if (read.plan.isEmpty()) {
      return new Checked<>(new PlanTree(source, List.of(), read.damagedWords), read.findings);
    }
    List<Tree.Item> items = Pieces.each(read.plan.get().item(), new ItemReader(new Pieces(read.spans)));
    return new Checked<>(new PlanTree(source, items, read.damagedWords), bounded(source, read.findings));
  }

  /**
   * A portion as ANTLR read it.
   *
   * @param tokens in order, with those that the parser does not see, put in order where that was needed
   * @param plan absent where nesting is too deep to be read
   */
  record Portion(Spans spans, List<Token> tokens, Optional<PlanContext> plan, List<Finding> findings, Set<String> damagedWords) {}

  /** Reads a text, or such a part of it as means the same wherever it stands. */
  static Portion read(Span portion) {
    Source source = portion.source();
    ConflictMarks.Read unmerged = ConflictMarks.in(portion);
    String text = unmerged.text();
    Spans spans = new Spans(portion, text);
    TokenRepair repair = new TokenRepair(spans);
    List<Token> tokens = repair.repair(PlanLexer.all(text, source.name()));
    List<Finding> findings = new ArrayList<>(unmerged.findings());
    findings.addAll(repair.findings());
    if (repair.tooDeep()) {
      return new Portion(spans, tokens, Optional.empty(), findings, repair.damagedWords());
    }
    WattleParser parser = new WattleParser(new CommonTokenStream(new ListTokenSource(tokens, source.name())));
    parser.removeErrorListeners();
    parser.getInterpreter().setPredictionMode(PredictionMode.LL);
    LineRecovery recovery = new LineRecovery(spans);
    parser.setErrorHandler(recovery);
    PlanContext plan = parser.plan();
    findings.addAll(recovery.findings());
    findings.addAll(Doubled.in(plan, spans));
    recovery.damagedWords().addAll(repair.damagedWords());
    return new Portion(spans, tokens, Optional.of(plan), findings, recovery.damagedWords());
  }

  /** The findings in order, no more than a reader can bear. */
  static List<Finding> bounded(Source source, List<Finding> found) {
    List<Finding> findings = new ArrayList<>(new LinkedHashSet<>(found)); // a mistake may end two statements at once
    findings.sort(Finding.BY_PLACE);
    if (findings.size() <= MOST_FINDINGS) {
      return findings;
    }
    int left = findings.size() - MOST_FINDINGS;
    List<Finding> kept = new ArrayList<>(findings.subList(0, MOST_FINDINGS));
    kept.add(
        Finding.error(Stop.TOO_MANY_MISTAKES.rule(), left + " more mistakes in the text of " + source.name())
            .at(findings.get(MOST_FINDINGS).place().orElseThrow().span(), "the next of them")
            .because("The first " + MOST_FINDINGS + " are listed; mend those and check again.")
            .build());
    return kept;
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
