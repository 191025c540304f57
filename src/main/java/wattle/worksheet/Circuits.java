package wattle.worksheet;

import java.util.List;

/**
 * Branch circuits of one purpose in a dwelling.
 *
 * @param count circuits; a branch with two hots is two
 * @param branches names of the branches, where a plan has any
 */
public record Circuits(int count, List<String> branches) {
  public static final Circuits NONE = new Circuits(0, List.of());

  public Circuits {
    branches = List.copyOf(branches);
  }

  /** So many, of no plan. */
  public static Circuits of(int count) {
    return new Circuits(count, List.of());
  }
}
