package wattle.live;

import java.util.List;
import java.util.Optional;
import wattle.compiler.Compilation;
import wattle.finding.Finding;
import wattle.finding.SameFact;

/**
 * A plan as it stood at one moment.
 *
 * @param number grows with each version
 * @param shown what pictures and figures are of
 * @param findings of the text as it stands now, which may not be the one that is shown
 * @param trouble why what is shown is not what stands in the file; absent where it is
 * @param read time of day at which the files were read last
 */
record Version(int number, Compilation shown, List<Finding> findings, Optional<String> trouble, String read) {
  Version {
    findings = List.copyOf(findings);
  }

  /** The findings, each fact once. */
  List<Finding> facts() {
    return SameFact.once(findings, shown.house()::hasNamed);
  }

  String title() {
    return shown.house().title().orElse(shown.source().name()) + shown.house().revision().map(r -> ", revision " + r).orElse("");
  }
}
