package wattle.syntax;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.RuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.TokenStream;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleLexer;
import wattle.syntax.grammar.WattleParser;

/** Says in the trade's words what a statement was, where it stopped making sense, and what could have stood there. */
final class SyntaxMessages {
  /** What a rule of the grammar is called in a house, and what it is made of. */
  private record Thing(String name, String expected) {}

  private static final Map<Integer, Thing> THINGS = Map.ofEntries(
      Map.entry(WattleParser.RULE_plan, new Thing("a plan", "a statement such as panel, branch or room")),
      Map.entry(WattleParser.RULE_pattern, new Thing("a pattern", "what a house is made of, such as a panel, branch, room or place line,")),
      Map.entry(WattleParser.RULE_parameters, new Thing("the parameters of a pattern", "a name such as n, or the closing parenthesis,")),
      Map.entry(WattleParser.RULE_arguments,
          new Thing("what is given to a pattern",
              "a figure, a name, a text in quotes or a cable such as by 14/2 NM-B, or the closing parenthesis,")),
      Map.entry(WattleParser.RULE_parameter, new Thing("the parameters of a pattern", "a name such as n")),
      Map.entry(WattleParser.RULE_placing, new Thing("a place line", "a pattern and a name, as in place flat(1) as flat1,")),
      Map.entry(WattleParser.RULE_overriding,
          new Thing("an override", "what one placement has instead, such as a room, branch or panel, or without and a name,")),
      Map.entry(WattleParser.RULE_leftOut, new Thing("what an override leaves out", "a name such as range or kitchen.range")),
      Map.entry(WattleParser.RULE_argument,
          new Thing("what is given to a pattern", "a figure, a name, a text in quotes or a cable such as by 14/2 NM-B")),
      Map.entry(WattleParser.RULE_repetition, new Thing("a repetition", "a name and a range, as in for n from 1 to 12,")),
      Map.entry(WattleParser.RULE_heading,
          new Thing("the title of a plan", "the title in quotes, or revision and its name in quotes behind it,")),
      Map.entry(WattleParser.RULE_use, new Thing("a use line", "code, parts or rules with a name, or a file in quotes")),
      Map.entry(WattleParser.RULE_let, new Thing("a let line", "a name, = and a value such as 3 m")),
      Map.entry(WattleParser.RULE_dwelling, new Thing("the dwelling", "a fact such as floor-area 186 m2")),
      Map.entry(WattleParser.RULE_panelName, new Thing("the panels of a dwelling", "the name of a panel")),
      Map.entry(WattleParser.RULE_fact, new Thing("a fact", "a name and a value such as 186 m2")),
      Map.entry(WattleParser.RULE_service, new Thing("a service", "a source, a run or an earth line")),
      Map.entry(WattleParser.RULE_voltages, new Thing("the voltage of a service", "a pair such as 120/240 V")),
      Map.entry(WattleParser.RULE_serviceStatement,
          new Thing("a line of the service", "a source such as transformer 50 kVA, a run such as 27 m of 4/0 Al, or an electrode")),
      Map.entry(WattleParser.RULE_panel, new Thing("a panel", "a slot line, bus, slots, main breaker or bonded")),
      Map.entry(WattleParser.RULE_panelItem, new Thing("the heading of a panel", "from, by, or the { that opens it")),
      Map.entry(WattleParser.RULE_panelLine, new Thing("a line of a panel", "a slot, its rating, its protection and what it feeds")),
      Map.entry(WattleParser.RULE_slot, new Thing("a slot line", "its rating, its protection and what it feeds")),
      Map.entry(WattleParser.RULE_main, new Thing("the main of a panel", "a kind, a rating and what it can interrupt")),
      Map.entry(WattleParser.RULE_terminals, new Thing("the marking of terminals", "a temperature such as 75 degC, or Cu, Al or CO-ALR")),
      Map.entry(WattleParser.RULE_slotSpan, new Thing("a slot", "a slot such as 7, 2+4 or 10a")),
      Map.entry(WattleParser.RULE_slotItem, new Thing("a slot line", "its rating, its protection and what it feeds")),
      Map.entry(WattleParser.RULE_branch, new Thing("a branch", "a chain such as P --3 m-- hall.lamp")),
      Map.entry(WattleParser.RULE_chain, new Thing("a chain of runs", "a run such as --3 m-- and the next box")),
      Map.entry(WattleParser.RULE_place, new Thing("a place on a branch", "a box or device such as hall.lamp")),
      Map.entry(WattleParser.RULE_run, new Thing("a run", "its length and closing dashes, as in --3 m--")),
      Map.entry(WattleParser.RULE_runLength, new Thing("a run", "a length such as 3 m or 10 ft")),
      Map.entry(WattleParser.RULE_surroundings,
          new Thing("the surroundings of a run", "in, bundled, through, buried, supported, held, from-edge or nail-plated")),
      Map.entry(WattleParser.RULE_wiring,
          new Thing("a cable", "a cable such as 14/2 NM-B, or a raceway such as 3/4 in EMT with 3 x 10 Cu THHN,")),
      Map.entry(WattleParser.RULE_sets, new Thing("parallel sets", "how many, as in 3 sets of,")),
      Map.entry(WattleParser.RULE_cabling,
          new Thing("a cable", "a cable such as 14/2 NM-B, or a raceway such as 3/4 in EMT with 3 x 10 Cu THHN,")),
      Map.entry(WattleParser.RULE_raceway, new Thing("a raceway", "its name and by 3/4 in EMT")),
      Map.entry(WattleParser.RULE_room, new Thing("a room", "a device such as lamp: light 12 W, or a box")),
      Map.entry(WattleParser.RULE_box, new Thing("a box", "a device such as sw: switch for lamp")),
      Map.entry(WattleParser.RULE_device, new Thing("a device", "a name, a colon and a kind, as in lamp: light 12 W")),
      Map.entry(WattleParser.RULE_deviceItem, new Thing("a device", "a kind, a load such as 12 W, or what it controls")),
      Map.entry(WattleParser.RULE_trial, new Thing("a trial", "an event such as kitchen.c1.upper draws 10 A")),
      Map.entry(WattleParser.RULE_event, new Thing("an event of a trial",
          "an event such as kitchen.c1.upper draws 10 A, hall.sw off, open neutral of counter, loosen, lift ground, fault, move,"
              + " swap, lose or transfer")),
      Map.entry(WattleParser.RULE_expectation,
          new Thing("an expectation", "what is measured, is, and a figure, as in neutral of counter is 0 A")),
      Map.entry(WattleParser.RULE_measure, new Thing("an expectation", "what is measured, as in neutral of counter")),
      Map.entry(WattleParser.RULE_silence, new Thing("a silence", "the rule, because and a reason in quotes")),
      Map.entry(WattleParser.RULE_part, new Thing("a part", "properties, one a line")),
      Map.entry(WattleParser.RULE_cable, new Thing("a cable type", "properties, one a line")),
      Map.entry(WattleParser.RULE_property, new Thing("a property", "a name and its values, then a new line")),
      Map.entry(WattleParser.RULE_table, new Thing("a table", "a source, the columns, then one row a line")),
      Map.entry(WattleParser.RULE_limit, new Thing("a limit", "a name, a figure and its source in braces")),
      Map.entry(WattleParser.RULE_citation, new Thing("a source", "the work and the article, each in quotes")),
      Map.entry(WattleParser.RULE_ruleBlock, new Thing("a rule", "a line such as for each, require, otherwise or because")),
      Map.entry(WattleParser.RULE_ruleLine,
          new Thing("a line of a rule", "for each, let, require, otherwise, at, note, fix, because, source, accept, exception or reject")),
      Map.entry(WattleParser.RULE_words, new Thing("a text of a rule", "words in quotes")),
      Map.entry(WattleParser.RULE_sample, new Thing("a sample plan", "a plan in braces")),
      Map.entry(WattleParser.RULE_claim, new Thing("a claim", "a property such as r.length, a figure, or words such as is at most")),
      Map.entry(WattleParser.RULE_comparator, new Thing("a comparison", "is, is at most, is at least, is above, is below or includes")),
      Map.entry(WattleParser.RULE_quality, new Thing("a property", "a name such as r.breaker.rating")),
      Map.entry(WattleParser.RULE_amount, new Thing("a figure", "a number with its unit, or an expression in parentheses")),
      Map.entry(WattleParser.RULE_expression, new Thing("an expression", "a number with its unit, or a name")));

  private static final List<String> OPENERS = List.of(
      "plan", "use", "let", "dwelling", "service", "panel", "branch", "raceway", "room", "trial", "expect",
      "silence", "pattern", "place", "override", "pack", "part", "cable", "table", "limit", "rule");

  private static final Set<Integer> FIGURES = Set.of(WattleParser.RULE_amount, WattleParser.RULE_runLength);

  private final Spans spans;

  SyntaxMessages(Spans spans) {
    this.spans = spans;
  }

  Finding unexpected(ParserRuleContext context, Token offending, TokenStream tokens) {
    if (UnitNames.standsForName(offending, tokens)) {
      return UnitNames.finding(offending, spans.of(offending));
    }
    if (ReservedNames.standsForName(offending, tokens)) {
      return ReservedNames.finding(offending, spans.of(offending));
    }
    RuleContext open = stillOpen(context, offending);
    Thing thing = thing(open);
    String shown = shown(offending);
    Span span = spans.of(offending);
    if (offending.getType() == WattleLexer.NL || offending.getType() == Token.EOF) {
      span = endOfLineBefore(offending, tokens);
    }
    Finding.Builder finding = Finding.error(Mistake.UNEXPECTED, "unexpected " + shown + " in " + thing.name).at(span,
        thing.expected + " is expected here");
    if (context.getRuleIndex() == WattleParser.RULE_plan) {
      Span word = span;
      for (String near : NearNames.of(offending.getText(), OPENERS)) {
        finding.fix(Fix.safe("write " + near, word, near));
      }
    } else if (context.getRuleIndex() == WattleParser.RULE_run && offending.getText().equals("-")) {
      finding.fix(Fix.safe("close the run with two dashes", span, "--"));
    } else if (offending.getText().equals("--") && context.getRuleIndex() == WattleParser.RULE_branch) {
      finding.fix("begin the line with a box; a chain goes on in the next line where a line ends in the closing dashes, as in P --3 m--");
    } else if (offending.getText().equals("by") && isOrIn(open, WattleParser.RULE_chain)) {
      finding.fix("write the cable of a run before its second dashes, as in --5 m by 14/3 NM-B-- hall.lamp");
    } else if (offending.getText().matches("[x×]") && isOrIn(open, WattleParser.RULE_wiring)) {
      finding.fix("write the raceway first, then its conductors, as in 2 in PVC with 4 x 3/0 Cu THWN");
    }
    return finding.build();
  }

  /** A statement that ended just before on the same line is what the reader thinks of, rather than its block, but no whole figure. */
  private static RuleContext stillOpen(ParserRuleContext context, Token offending) {
    ParserRuleContext at = context;
    while (at.getChildCount() > 0 && at.getChild(at.getChildCount() - 1) instanceof ParserRuleContext last
        && last.getStop() != null && last.getStop().getLine() == offending.getLine() && last.getChildCount() > 0
        && (last.exception != null || !FIGURES.contains(last.getRuleIndex()))) {
      at = last;
    }
    return at;
  }

  private static boolean isOrIn(RuleContext context, int rule) {
    for (RuleContext at = context; at != null; at = at.parent) {
      if (at.getRuleIndex() == rule) {
        return true;
      }
    }
    return false;
  }

  /** The innermost rule on the way up that a reader has a word for. */
  private static Thing thing(RuleContext context) {
    for (RuleContext at = context; at != null; at = at.parent) {
      Optional<Thing> found = Optional.ofNullable(THINGS.get(at.getRuleIndex()));
      if (found.isPresent()) {
        return found.get();
      }
    }
    throw new AssertionError("no rule is called plan");
  }

  private static String shown(Token token) {
    if (token.getType() == Token.EOF) {
      return "the end of the file";
    }
    if (token.getType() == WattleLexer.NL) {
      return "a new line";
    }
    String text = token.getText();
    return "'" + (text.codePointCount(0, text.length()) > 40 ? text.substring(0, text.offsetByCodePoints(0, 40)) + "…" : text) + "'";
  }

  /** The empty place just after the last thing that was read: where something is missing. */
  private Span endOfLineBefore(Token token, TokenStream tokens) {
    for (int i = token.getTokenIndex() - 1; i >= 0; i--) {
      Token before = tokens.get(i);
      if (before.getChannel() == Token.DEFAULT_CHANNEL && before.getType() != WattleLexer.NL) {
        return spans.of(before).after();
      }
    }
    return spans.of(token);
  }
}
