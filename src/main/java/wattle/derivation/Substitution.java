package wattle.derivation;

import java.util.List;

/** Puts the values of inputs where a formula has their symbols. */
final class Substitution {
  private Substitution() {}

  static String of(String formula, List<Derivation> inputs) {
    StringBuilder text = new StringBuilder();
    int at = 0;
    while (at < formula.length()) {
      int end = at;
      while (end < formula.length() && isSymbolPart(formula.charAt(end), end == at)) {
        end++;
      }
      if (end == at) {
        text.append(formula.charAt(at++));
        continue;
      }
      String word = formula.substring(at, end);
      // A sum runs over several inputs of one symbol; no one of their values stands for all.
      boolean summed = text.toString().endsWith("Σ ");
      boolean raised = end < formula.length() && "²³⁴".indexOf(formula.charAt(end)) >= 0;
      text.append(
          inputs.stream()
              .filter(i -> !summed && i.symbol().equals(word))
              .findFirst()
              .map(i -> inParentheses(i.value().inFormula(), raised))
              .orElse(word));
      at = end;
    }
    return text.toString();
  }

  // "15 A²" would read as ampere squared, and "3 − -2" hardly at all.
  private static String inParentheses(String value, boolean raised) {
    return value.startsWith("-") || raised && !value.chars().allMatch(Character::isDigit) ? "(" + value + ")" : value;
  }

  private static boolean isSymbolPart(char c, boolean first) {
    return Character.isLetter(c) || !first && (Character.isDigit(c) || c == '_');
  }
}
