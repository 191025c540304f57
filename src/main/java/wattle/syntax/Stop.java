package wattle.syntax;

/** Findings after which nothing more of a file is read, or reported. */
enum Stop {
  NESTING_TOO_DEEP("nesting-too-deep"), TOO_MANY_MISTAKES("too-many-mistakes");

  private final String rule;

  Stop(String rule) {
    this.rule = rule;
  }

  /** Name of the finding. */
  String rule() {
    return rule;
  }

  /** Whether a finding of this name is one of them. */
  static boolean isCalled(String rule) {
    return NESTING_TOO_DEEP.rule.equals(rule) || TOO_MANY_MISTAKES.rule.equals(rule);
  }
}
