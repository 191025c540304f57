package wattle.bench;

import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import wattle.emit.media.graphviz.DotEngine;

/** A process in which the diagram engine has been starting for half a second, as while a plan is read and checked. */
@State(Scope.Benchmark)
public class WarmedUp {
  @Setup(Level.Trial)
  public void warmUp() throws InterruptedException {
    DotEngine.builtIn().warmUp();
    Thread.sleep(500);
  }
}
