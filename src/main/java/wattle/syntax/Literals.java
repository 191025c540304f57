package wattle.syntax;

import java.util.Arrays;
import java.util.Comparator;
import org.antlr.v4.runtime.Vocabulary;
import wattle.syntax.grammar.WattleParser;

/** Words and signs that the grammar writes out, and units: told by the type of their tokens, and found in a text, without a copy of it. */
final class Literals {
  /** As the grammar's rule of units has them. */
  static final String[] UNITS = {
      "A", "mA", "kA", "V", "mV", "kV", "W", "kW", "VA", "kVA", "Wh", "kWh", "\u03A9", "\u2126", "ohm", "m\u03A9", "m\u2126", "mohm",
      "k\u03A9", "k\u2126", "kohm", "m", "cm", "mm", "km", "kft", "mm²", "mm2", "cm²", "cm2", "m²", "m2", "ft²", "ft2", "in²", "in2", "in³",
      "in3", "cm³", "cm3", "mL", "°C", "degC", "°F", "degF", "K", "%", "s", "ms", "min", "h", "Hz", "AWG", "kcmil", "A2s", "A²s"};

  /** A power of two, several times as many as there are. */
  private static final int PLACES = 1024;
  private static final String[] LITERALS = literals();
  /** By a hash of their text, each in the first free place from there; types of literals, 0 where there is none. */
  private static final int[] PLACED = placed();
  private static final Comparator<String> LONGEST_FIRST = (a, b) -> b.length() - a.length();
  /** Units by their first character, the longest first. */
  private static final String[][] UNITS_FROM = unitsFrom();

  private Literals() {}

  /** Empty for a type whose tokens differ, such as names and figures. */
  static String of(int type) {
    return type > 0 ? LITERALS[type] : "";
  }

  /** Type of the word or sign that stands in a range of a text; 0 where the grammar writes none such out. */
  static int typeOf(String text, int start, int end) {
    int hash = 0;
    for (int i = start; i < end; i++) {
      hash = 31 * hash + text.charAt(i); // as String has it
    }
    for (int place = place(hash); PLACED[place] != 0; place = place + 1 & PLACES - 1) {
      String literal = LITERALS[PLACED[place]];
      if (literal.length() == end - start && text.startsWith(literal, start)) {
        return PLACED[place];
      }
    }
    return 0;
  }

  /** Length of the longest unit that begins at a place of a text; 0 where none does. */
  static int unitAt(String text, int start) {
    char first = text.charAt(start);
    for (String unit : UNITS_FROM[first < UNITS_FROM.length ? first : 0]) {
      if (text.startsWith(unit, start)) {
        return unit.length();
      }
    }
    return first == '\u03A9' || first == '\u2126' ? 1 : 0;
  }

  private static String[] literals() {
    Vocabulary vocabulary = WattleParser.VOCABULARY;
    String[] literals = new String[vocabulary.getMaxTokenType() + 1];
    for (int type = 0; type < literals.length; type++) {
      String quoted = vocabulary.getLiteralName(type);
      literals[type] = quoted == null ? "" : unescaped(quoted.substring(1, quoted.length() - 1));
    }
    return literals;
  }

  /** ANTLR names a sign beyond ASCII by its number. */
  private static String unescaped(String name) {
    return name.startsWith("\\u") ? Character.toString(Integer.parseInt(name.substring(2), 16)) : name;
  }

  private static int[] placed() {
    int[] placed = new int[PLACES];
    for (int type = 1; type < LITERALS.length; type++) {
      if (!LITERALS[type].isEmpty()) {
        int place = place(LITERALS[type].hashCode());
        while (placed[place] != 0) {
          place = place + 1 & PLACES - 1;
        }
        placed[place] = type;
      }
    }
    return placed;
  }

  private static int place(int hash) {
    return (hash ^ hash >>> 16) & PLACES - 1;
  }

  private static String[][] unitsFrom() {
    String[][] from = new String[256][];
    Arrays.fill(from, new String[0]);
    for (String unit : UNITS) {
      char first = unit.charAt(0);
      if (first < from.length) {
        String[] more = Arrays.copyOf(from[first], from[first].length + 1);
        more[more.length - 1] = unit;
        Arrays.sort(more, LONGEST_FIRST);
        from[first] = more;
      }
    }
    return from;
  }
}
