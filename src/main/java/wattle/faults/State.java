package wattle.faults;

/** The state of the conductors that a fault current is worked out for. */
enum State {
  /** Cold, so that the current is greatest. */
  COLD("greatest"),
  /** As hot as their insulation is rated for, so that the current is least. */
  HOT("least");

  private final String bound;

  State(String bound) {
    this.bound = bound;
  }

  String bound() {
    return bound;
  }
}
