package wattle.server;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import wattle.read.SourceReader;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.FixTrial;
import wattle.edit.Mender;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;

/** A fix that changes the house is offered only after it was made aside, and the house as it would be was tried. */
final class FixOnTrial {
  private FixOnTrial() {}

  /** Whether a fix takes its findings away and makes nothing more dangerous. */
  static boolean stands(Fix fix, List<Finding> findings, Analysis analysis) {
    if (fix.safety() == Fix.Safety.SAFE) {
      return true; // the house stays as it is
    }
    Map<Path, String> texts = new HashMap<>();
    analysis.files().forEach((path, tree) -> texts.put(path, tree.source().text()));
    Map<Path, List<Edit>> edits = fix.edits().stream()
        .collect(Collectors.groupingBy(e -> analysis.fileOf(e.span()).orElseThrow()));
    edits.forEach((path, list) -> texts.computeIfPresent(path, (p, text) -> Mender.apply(text, list)));
    try {
      Compilation after = new Compiler(new SourceReader(texts, SourceReader.USUAL_MOST_BYTES)).compile(analysis.plan());
      return findings.stream().allMatch(f -> FixTrial.removes(f, analysis.compilation(), after))
          && FixTrial.brings(fix, analysis.compilation(), after).isEmpty()
          && FixTrial.objection(fix, analysis.compilation(), after).isEmpty();
    } catch (SourceReader.Unreadable e) {
      return false; // the plan is gone from the disk and is not open either
    }
  }
}
