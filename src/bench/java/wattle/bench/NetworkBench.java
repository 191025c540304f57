package wattle.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.CommonOps_DSCC;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;
import org.openjdk.jmh.annotations.AuxCounters;
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
import wattle.network.Complex;
import wattle.network.Network;
import wattle.network.Solution;

/**
 * A radial network solved by elimination from the leaves, with its check by Kirchhoff's law, and the same network as node
 * equations by a general sparse library. The library is given the best order of nodes that there is for a tree, far ends
 * first, and no check; its own ways to find an order are none and by chance.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgs = {"-Xmx12g", "-XX:+UseSerialGC"})
@Warmup(iterations = 3)
@Measurement(iterations = 5)
public class NetworkBench {
  @Param({"100000", "1000000"})
  public int boxes;

  private Street street;
  private Network network;
  private Solution solution;

  @Setup
  public void write() {
    street = new Street(boxes);
    network = street.network();
    solution = network.solve();
  }

  /** What the network and its solution hold, for each box. */
  @AuxCounters(AuxCounters.Type.EVENTS)
  @State(Scope.Thread)
  public static class Memory {
    public double bytesPerBox;
  }

  /** Time of the processor on it, which other work on the machine does not lengthen as it does the time on the clock. */
  @AuxCounters(AuxCounters.Type.EVENTS)
  @State(Scope.Thread)
  public static class Processor {
    public double processorMillis;

    <T> T time(Supplier<T> work) {
      ThreadMXBean threads = ManagementFactory.getThreadMXBean();
      long before = threads.getCurrentThreadCpuTime();
      T made = work.get();
      processorMillis = (threads.getCurrentThreadCpuTime() - before) / 1e6;
      return made;
    }
  }

  @Benchmark
  public Solution tree(Processor processor) {
    return processor.time(network::solve);
  }

  /** Network, solver and solution together, from nothing. */
  @Benchmark
  public Solution memory(Memory memory) {
    network = null;
    solution = null;
    long before = used();
    network = street.network();
    solution = network.solve();
    memory.bytesPerBox = (used() - before) / (double) boxes;
    return solution;
  }

  private static long used() {
    System.gc();
    return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
  }

  /**
   * From the network as written to volts, through the library: equations, factors, answer. The tree's time holds the same
   * steps.
   */
  @Benchmark
  public DMatrixRMaj library(Processor processor) {
    DMatrixRMaj answer = processor.time(this::byLibrary);
    compare(answer);
    return answer;
  }

  private DMatrixRMaj byLibrary() {
    int size = 6 * boxes;
    DMatrixSparseTriplet entries = new DMatrixSparseTriplet(size, size, 28 * boxes);
    street.equations(entries::addItem);
    DMatrixSparseCSC matrix = DConvertMatrixStruct.convert(entries, (DMatrixSparseCSC) null);
    CommonOps_DSCC.duplicatesAdd(matrix, null);
    matrix.sortIndices(null);
    DMatrixRMaj right = new DMatrixRMaj(size, 1);
    right.set(2 * street.node(0, 0), 0, street.sourceAmperes());
    right.set(2 * street.node(0, 1), 0, -street.sourceAmperes());
    DMatrixRMaj answer = new DMatrixRMaj(size, 1);
    LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver = LinearSolverFactory_DSCC.lu(FillReducing.NONE);
    if (!solver.setA(matrix)) {
      throw new IllegalStateException("the library found no factors");
    }
    solver.solve(right, answer);
    return answer;
  }

  /** Both ways must solve the same thing. */
  private void compare(DMatrixRMaj answer) {
    if (solution == null) {
      solution = network.solve();
    }
    int source = street.node(0, 0);
    Complex tree = solution.volts(0, 0);
    double apart = Math.hypot(tree.re() - answer.get(2 * source, 0), tree.im() - answer.get(2 * source + 1, 0));
    if (!(apart < 1e-6)) {
      throw new IllegalStateException("the two solutions are " + apart + " V apart");
    }
  }
}
