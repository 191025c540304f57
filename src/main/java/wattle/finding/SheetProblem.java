package wattle.finding;

/** Why a sheet of cells cannot be read, in words of ours: those of the library name its classes. */
public final class SheetProblem {
  private SheetProblem() {}

  /** What is amiss, by what the library for comma-separated cells throws: an argument where the first line is none, else a quote. */
  public static String why(Exception thrown) {
    return thrown instanceof IllegalArgumentException
        ? "two columns in its first line have the same name"
        : "a quote that is opened must be closed before the next separator";
  }
}
