package wattle.server;

import java.util.Optional;
import java.util.regex.Pattern;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.library.Library;

/** A line that silences a finding, its reason left to be written: until then it silences nothing and is a finding itself. */
final class SilenceFix {
  /** What a silence may name: a path, and of a panel its slots. */
  private static final Pattern SUBJECT = Pattern.compile(
      "[\\p{L}_][\\p{L}_0-9.-]*(/[0-9]+[ab]?(\\+[0-9]+[ab]?)*)?");

  private SilenceFix() {}

  /** Absent for what no plan may silence: mistakes in the text, and what the plan itself expects. */
  static Optional<Fix> of(Finding finding, Analysis analysis) {
    Library library = analysis.compilation().library();
    boolean can = library.rules().containsKey(finding.rule()) || Compiler.COMPUTED.contains(finding.rule());
    if (!can || finding.subject().filter(s -> !SUBJECT.matcher(s).matches()).isPresent()) {
      return Optional.empty();
    }
    String at = finding.subject().map(s -> " at " + s).orElse("");
    Source plan = analysis.files().get(analysis.plan()).source();
    int end = plan.text().length();
    while (end > 0 && Character.isWhitespace(plan.text().charAt(end - 1))) {
      end--;
    }
    String line = "\n\nsilence " + finding.rule() + at + " because \"\"";
    return Optional.of(
        Fix.offered("silence " + finding.rule() + (at.isEmpty() ? "" : at) + "; write the reason", new Span(plan, end, end), line));
  }
}
