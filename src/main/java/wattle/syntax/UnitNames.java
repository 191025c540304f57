package wattle.syntax;

import java.util.Map;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.TokenStream;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleLexer;

/** Units that stand where a name was meant: the most usual of them are short names of devices and rooms as well. */
final class UnitNames {
  /** What a unit says, and a name that its letter may have been short for. */
  private record Meaning(String unit, String name) {}

  private static final Map<String, Meaning> MEANINGS = Map.ofEntries(
      Map.entry("A", new Meaning("amperes", "A1")),
      Map.entry("V", new Meaning("volts", "V1")),
      Map.entry("W", new Meaning("watts", "west")),
      Map.entry("K", new Meaning("kelvin", "kit")),
      Map.entry("VA", new Meaning("volt-amperes", "VA1")),
      Map.entry("kW", new Meaning("kilowatts", "kW1")),
      Map.entry("m", new Meaning("meters", "main1")),
      Map.entry("cm", new Meaning("centimeters", "cm1")),
      Map.entry("mm", new Meaning("millimeters", "mm1")),
      Map.entry("s", new Meaning("seconds", "sw")),
      Map.entry("ms", new Meaning("milliseconds", "sw-m")),
      Map.entry("min", new Meaning("minutes", "least")),
      Map.entry("h", new Meaning("hours", "hall")),
      Map.entry("ft", new Meaning("feet", "ft1")),
      Map.entry("in", new Meaning("inches", "inner")));

  private UnitNames() {}

  /** Whether a token is a unit that follows no number, or one of the words for feet and inches before a colon. */
  static boolean standsForName(Token token, TokenStream tokens) {
    boolean unit = token.getType() == WattleLexer.UNIT;
    boolean word = token.getText().equals("ft") || token.getText().equals("in");
    if (unit) {
      int before = typeBefore(token, tokens);
      return before != WattleLexer.NUMBER && before != WattleLexer.UNIT;
    }
    return word && tokens.LT(1) == token && tokens.LT(2).getText().equals(":");
  }

  private static int typeBefore(Token token, TokenStream tokens) {
    for (int i = token.getTokenIndex() - 1; i >= 0; i--) {
      if (tokens.get(i).getChannel() == Token.DEFAULT_CHANNEL) {
        return tokens.get(i).getType();
      }
    }
    return Token.EOF;
  }

  static Finding finding(Token token, Span span) {
    String text = token.getText();
    Meaning meaning = MEANINGS.getOrDefault(text, new Meaning("a unit of measure", text + "-1"));
    return Finding.error("unit-as-name", "'" + text + "' is a unit (" + meaning.unit + ") and cannot be a name")
        .at(span, "a name is expected here")
        .because("A name that is also a unit could be read as part of the figure before it.")
        .fix(Fix.offered("write a longer name, such as " + meaning.name, span, meaning.name))
        .build();
  }
}
