package wattle.syntax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import org.antlr.v4.runtime.atn.ATN;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.Transition;
import wattle.syntax.grammar.WattleParser;

/** Words that stand in a rule of the grammar, read from the grammar itself. */
public final class GrammarWords {
  private GrammarWords() {}

  /** The words of a rule, in alphabetical order; signs are no words. */
  public static List<String> of(String rule) {
    int index = Arrays.asList(WattleParser.ruleNames).indexOf(rule);
    if (index < 0) {
      throw new IllegalArgumentException("the grammar has no rule " + rule);
    }
    TreeSet<String> words = new TreeSet<>();
    ATN atn = WattleParser._ATN;
    for (ATNState state : new ArrayList<>(atn.states)) {
      if (state == null || state.ruleIndex != index) {
        continue;
      }
      for (Transition transition : state.getTransitions()) {
        if (transition.label() != null) {
          transition.label().toList().stream().map(Literals::of).filter(w -> !w.isEmpty() && Character.isLetter(w.charAt(0)))
              .forEach(words::add);
        }
      }
    }
    return List.copyOf(words);
  }
}
