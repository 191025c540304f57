package wattle.emit.document.lockout;

import wattle.compiler.Compilation;
import wattle.finding.Severity;

/**
 * What a sheet says of the plan it is from.
 *
 * @param plan title and revision of the plan, or the name of its file
 * @param errors how many errors of the plan stand; with any, what the sheet says may be wrong
 */
public record SheetHead(String plan, long errors) {
  public static SheetHead of(Compilation plan) {
    String title = plan.house().title().orElse(plan.source().name());
    return new SheetHead(title + plan.house().revision().map(r -> ", revision " + r).orElse(""), plan.count(Severity.ERROR));
  }

  /** Empty where no error stands. */
  String doubt() {
    return errors == 0
        ? ""
        : "The plan has " + errors + (errors == 1 ? " error" : " errors") + " (wattle check): this sheet may be wrong or incomplete.";
  }
}
