package wattle.worksheet;

import wattle.finding.Severity;

/**
 * Why a method does not fit, or what it lacks.
 *
 * @param rule name of the finding
 * @param severity an error where no worksheet could be made
 * @param element name of the dwelling, panel, service or load that it is about; may be empty
 * @param headline one line, lower case
 * @param reason one sentence
 * @param cure an order that can be followed
 */
public record Objection(
    String rule, Severity severity, String element, String headline, String reason, String cure) {
  static Objection error(String rule, String element, String headline, String reason, String cure) {
    return new Objection(rule, Severity.ERROR, element, headline, reason, cure);
  }

  static Objection warning(String rule, String element, String headline, String reason, String cure) {
    return new Objection(rule, Severity.WARNING, element, headline, reason, cure);
  }
}
