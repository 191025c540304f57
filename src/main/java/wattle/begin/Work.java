package wattle.begin;

import java.util.Arrays;
import java.util.Optional;

/** Whether the work is to be done or is there, and what protects it. */
public enum Work {
  NEW("new"), BREAKERS("breakers"), FUSES("fuses");

  private final String word;

  Work(String word) {
    this.word = word;
  }

  /** What a user gives. */
  public String word() {
    return word;
  }

  /** The kind of work called so. */
  public static Optional<Work> of(String text) {
    return Arrays.stream(values()).filter(w -> w.word.equals(text.strip())).findFirst();
  }

  boolean isExisting() {
    return this != NEW;
  }

  /** What stands in the head of a block: {@code existing}, or nothing. */
  String status() {
    return isExisting() ? " existing" : "";
  }
}
