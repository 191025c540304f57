package wattle.compiler;

/** The plans that samples of faults and of words are made in. */
final class SampleTexts {
  private SampleTexts() {}

  /**
   * A plan with some of its texts replaced.
   *
   * @param sample cells of a line, from the given one on pairs of a text that the plan has once and the text instead
   */
  static String with(String plan, String[] sample, int from) {
    String changed = plan;
    for (int i = from; i + 1 < sample.length; i += 2) {
      changed = changed.replace(sample[i], sample[i + 1]);
    }
    return changed;
  }
}
