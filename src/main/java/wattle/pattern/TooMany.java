package wattle.pattern;

import wattle.finding.Finding;
import wattle.finding.Span;

/** The finding about patterns that would make more than is worked with. */
final class TooMany {
  static final String RULE = "patterns-too-large";

  private TooMany() {}

  static void report(Ledger ledger, Span place) {
    if (ledger.findings().stream().anyMatch(f -> f.rule().equals(RULE))) {
      return; // one range too large is enough to say
    }
    ledger.report(
        Finding.error(RULE, String.format(java.util.Locale.ROOT, "patterns place more than %,d items", ledger.most()))
            .at(place, "placing stopped here")
            .because("The limit keeps a typing error in a range from using up the memory.")
            .fix("place fewer, or raise the limit with --most-placed"));
  }
}
