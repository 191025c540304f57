package wattle.bench;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import wattle.balance.Balance;
import wattle.balance.PanelBalance;
import wattle.loads.ConnectedLoads;
import wattle.model.House;

/** The proven search for slots, on full panels, and how it grows with them. */
@State(Scope.Benchmark)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class BalanceBench {
  @Param({"12", "24", "42", "60", "84"})
  private int slots;

  @Param({"1", "2", "3"})
  private long seed;

  private House house;
  private ConnectedLoads loads;

  @Setup
  public void panel() {
    house = Panels.full(slots, seed);
    loads = ConnectedLoads.of(house);
  }

  /** Warm; a proposal that is not proven is a failure here. */
  @Benchmark
  @BenchmarkMode(Mode.AverageTime)
  @Fork(1)
  @Warmup(iterations = 2, time = 1)
  @Measurement(iterations = 3, time = 1)
  public List<PanelBalance> proven() {
    List<PanelBalance> found = Balance.of(house, loads, List.of("P"), Integer.MAX_VALUE, Balance.USUAL_MOST_STEPS);
    if (!found.get(0).proof().complete()) {
      throw new IllegalStateException("not proven: " + found.get(0).proof());
    }
    return found;
  }
}
