package wattle.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Span;

/** The fixes of all findings of a kind as one. */
final class ManyFixes {
  private ManyFixes() {}

  /** Absent where the plan has no other finding of this kind with one fix that can be made, or where all of them at once do harm. */
  static Optional<Fix> ofAllLike(Finding finding, Analysis analysis) {
    List<Finding> mended = new ArrayList<>();
    List<Edit> edits = new ArrayList<>();
    Fix.Safety safety = Fix.Safety.SAFE;
    for (Finding each : analysis.compilation().findings()) {
      Optional<Fix> fix = each.rule().equals(finding.rule()) && each.silenced().isEmpty() ? only(each) : Optional.empty();
      // One edit may mend several findings; an edit that touches another's text is left for a second time.
      boolean known = fix.isPresent() && edits.containsAll(fix.get().edits());
      if (fix.isPresent() && (known || fix.get().edits().stream().noneMatch(e -> touches(e, edits)))) {
        mended.add(each);
        edits.addAll(known ? List.of() : fix.get().edits());
        safety = fix.get().safety() == Fix.Safety.SAFE ? safety : Fix.Safety.OFFERED;
      }
    }
    if (mended.size() < 2 || !mended.contains(finding)) {
      return Optional.empty();
    }
    Fix all = new Fix("fix all " + mended.size() + " of " + finding.rule(), edits, safety);
    return edits.stream().allMatch(e -> analysis.fileOf(e.span()).isPresent()) && FixOnTrial.stands(all, mended, analysis)
        ? Optional.of(all)
        : Optional.empty();
  }

  /** The one fix of a finding that can be made; none where there is a choice. */
  private static Optional<Fix> only(Finding finding) {
    List<Fix> possible = finding.fixes().stream().filter(f -> !f.edits().isEmpty()).toList();
    return possible.size() == 1 ? Optional.of(possible.get(0)) : Optional.empty();
  }

  private static boolean touches(Edit edit, List<Edit> others) {
    Span span = edit.span().written();
    return others.stream().map(o -> o.span().written())
        .anyMatch(o -> o.source().name().equals(span.source().name()) && o.start() <= span.end() && span.start() <= o.end());
  }
}
