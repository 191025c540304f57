package wattle.bench;

import java.util.Arrays;

/** What the bench profile runs: the table of {@link Ratios} where that is asked for, else the benchmarks of that name. */
public final class Main {
  private Main() {}

  /** @param arguments the name of a benchmark, any regular expression, and options of JMH */
  public static void main(String[] arguments) throws Exception {
    if (Arrays.asList(arguments).contains(Ratios.class.getSimpleName())) {
      Ratios.print();
    } else {
      org.openjdk.jmh.Main.main(arguments);
    }
  }
}
