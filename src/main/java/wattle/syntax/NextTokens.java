package wattle.syntax;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.ATN;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.NotSetTransition;
import org.antlr.v4.runtime.atn.RuleStopState;
import org.antlr.v4.runtime.atn.RuleTransition;
import org.antlr.v4.runtime.atn.Transition;
import wattle.syntax.grammar.WattleLexer;
import wattle.syntax.grammar.WattleParser;

/**
 * What may stand next in a plan, told by the grammar itself: every way of reading the tokens so far is followed through its
 * network, so that nothing which could be written is left out, and nothing is named that could not be read.
 */
public final class NextTokens {
  private static final ATN GRAMMAR = WattleParser._ATN;
  private static final Set<Integer> NAMES = Set.of(WattleParser.RULE_word, WattleParser.RULE_mark);

  /**
   * A token that may stand next.
   *
   * @param literal the word or sign itself; empty for a name, a figure, a unit or a text
   * @param name whether a name may stand there; its literal is empty then
   * @param unit whether a unit may
   * @param rules the rules of the grammar that it stands in, the innermost first, without those for names alone
   */
  public record Next(String literal, boolean name, boolean unit, List<String> rules) {
    public Next {
      rules = List.copyOf(rules);
    }
  }

  /** Rules that have been entered, each by the state at which the one around it goes on. */
  private record Stack(ATNState follow, Stack around) {
    @Override
    public boolean equals(Object other) {
      return this == other; // one object for each: they are kept by the map that makes them
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }

  private record Reading(ATNState state, Stack stack) {}

  private record Entered(int follow, Stack around) {}

  private final Map<Entered, Stack> stacks;
  private final Set<Reading> readings;

  private NextTokens(Map<Entered, Stack> stacks, Set<Reading> readings) {
    this.stacks = stacks;
    this.readings = readings;
  }

  /** After some text that begins where a plan does; line ends in it count. */
  public static NextTokens after(String text) {
    NextTokens start = new NextTokens(new HashMap<>(), new LinkedHashSet<>());
    start.enter(GRAMMAR.ruleToStartState[WattleParser.RULE_plan], null);
    return start.then(text);
  }

  /** Whether nothing can be read as it stands so far. */
  public boolean isDead() {
    return readings.isEmpty();
  }

  /** Whether a text may stand next, whole. */
  public boolean takes(String text) {
    return !then(text).isDead();
  }

  private NextTokens then(String text) {
    NextTokens at = this;
    for (Token token : tokens(text)) {
      at = at.then(token.getType());
    }
    return at;
  }

  private static List<? extends Token> tokens(String text) {
    return PlanLexer.all(text, "").stream().filter(t -> t.getChannel() == Token.DEFAULT_CHANNEL).toList();
  }

  private NextTokens then(int type) {
    NextTokens next = new NextTokens(stacks, new LinkedHashSet<>());
    for (Reading reading : readings) {
      for (Transition transition : reading.state.getTransitions()) {
        if (!transition.isEpsilon() && transition.matches(type, Token.MIN_USER_TOKEN_TYPE, GRAMMAR.maxTokenType)) {
          next.enter(transition.target, reading.stack);
        }
      }
    }
    return next;
  }

  /** All states that are reached without a token; those alone are kept that take one. */
  private void enter(ATNState from, Stack around) {
    Set<Reading> seen = new LinkedHashSet<>();
    Deque<Reading> open = new ArrayDeque<>();
    open.push(new Reading(from, around));
    while (!open.isEmpty()) {
      Reading at = open.pop();
      if (!seen.add(at)) {
        continue;
      }
      if (at.state instanceof RuleStopState) {
        if (at.stack != null) {
          open.push(new Reading(at.stack.follow, at.stack.around));
        }
        continue;
      }
      boolean takes = false;
      for (Transition transition : at.state.getTransitions()) {
        if (transition instanceof RuleTransition rule) {
          open.push(new Reading(rule.target, stacks.computeIfAbsent(new Entered(rule.followState.stateNumber, at.stack),
              e -> new Stack(rule.followState, at.stack))));
        } else if (transition.isEpsilon()) {
          open.push(new Reading(transition.target, at.stack));
        } else {
          takes = true;
        }
      }
      if (takes) {
        readings.add(at);
      }
    }
  }

  /** Everything that may stand next, each once for each place in the grammar. */
  public List<Next> all() {
    Set<Next> all = new LinkedHashSet<>();
    for (Reading reading : readings) {
      List<String> rules = rules(reading);
      if (NAMES.contains(reading.state.ruleIndex)) {
        all.add(new Next("", true, false, rules));
        continue;
      }
      for (Transition transition : reading.state.getTransitions()) {
        if (!transition.isEpsilon() && !(transition instanceof NotSetTransition) && transition.label() != null) {
          for (int type : transition.label().toList()) {
            all.add(new Next(Literals.of(type), type == WattleLexer.WORD, type == WattleLexer.UNIT, rules));
          }
        }
      }
    }
    return List.copyOf(all);
  }

  private static List<String> rules(Reading reading) {
    List<String> rules = new ArrayList<>();
    if (!NAMES.contains(reading.state.ruleIndex)) {
      rules.add(WattleParser.ruleNames[reading.state.ruleIndex]);
    }
    for (Stack at = reading.stack; at != null; at = at.around) {
      if (!NAMES.contains(at.follow.ruleIndex)) {
        rules.add(WattleParser.ruleNames[at.follow.ruleIndex]);
      }
    }
    return rules;
  }
}
