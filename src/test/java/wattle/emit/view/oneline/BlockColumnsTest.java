package wattle.emit.view.oneline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.graphviz.DotEngine;
import wattle.golden.Golden;
import wattle.read.SourceReader;

/** Blocks of the one-line diagram in columns, against the layout of Graphviz, a general-purpose engine for graphs. */
class BlockColumnsTest {
  private static Block block(String id, double height, double entry, String... feeds) {
    Map<String, Block.Exit> exits = new java.util.LinkedHashMap<>();
    for (int i = 0; i < feeds.length; i++) {
      exits.put(feeds[i], new Block.Exit("out" + i, 30 + 20 * i));
    }
    return new Block(id, new Sketch(), 200, height, entry, exits, "");
  }

  private static Map<String, double[]> corners(Block... blocks) {
    List<Link> links = new ArrayList<>();
    for (Block from : blocks) {
      from.exits()
          .forEach((fed, exit) -> Stream.of(blocks).filter(b -> b.id().equals(fed)).forEach(to -> links.add(new Link(from, exit, to))));
    }
    links.sort(java.util.Comparator.comparingDouble(l -> l.exit().height()));
    return new BlockColumns(List.of(blocks), links).corners();
  }

  /** The picture is as large as with the layout of the engine, to what that rounds to. */
  @TestFactory
  Stream<DynamicTest> everyExampleIsAsLargeAsTheEngineMakesIt() {
    return Golden.plans("examples").stream().filter(p -> !p.toString().contains("broken"))
        .map(p -> DynamicTest.dynamicTest(p.toString(), () -> {
          Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of(p.toString()));
          OneLine diagram = new OneLine(plan.house(), plan.figures());
          Drawing own = diagram.drawing();
          Drawing engine = diagram.drawing(DotEngine.builtIn());
          assertThat(own.width()).isCloseTo(engine.width(), within(2.0));
          assertThat(own.height()).isLessThan(engine.height() + 2);
        }));
  }

  @Test
  void feedersRunStraightOrAsFarDownAsThePanelsAboveNeed() {
    Map<String, double[]> at = corners(block("s", 100, 30, "a", "b"), block("a", 300, 50), block("b", 100, 50));
    assertThat(at.get("s")).containsExactly(0, 0);
    assertThat(at.get("a")).containsExactly(260, -20);
    assertThat(at.get("b")).containsExactly(260, 300 - 20 + BlockColumns.BETWEEN_BLOCKS);
  }

  @Test
  void eachServiceStandsBesideWhatItFeeds() {
    Map<String, double[]> at = corners(block("s", 100, 30, "a"), block("t", 100, 30, "b"), block("a", 500, 50), block("b", 100, 50));
    double b = 500 - 20 + BlockColumns.BETWEEN_BLOCKS;
    assertThat(at.get("b")[1]).isEqualTo(b);
    assertThat(at.get("t")[1] + 30).isEqualTo(b + 50);
  }

  /** Both are findings of the binder, and no reason to draw nothing. */
  @Test
  void whatNothingFeedsAndWhatRunsInACircleIsPlacedToo() {
    Map<String, double[]> at = corners(block("s", 100, 30), block("lost", 100, 30), block("x", 100, 30, "y"), block("y", 100, 30, "x"));
    assertThat(at).containsOnlyKeys("s", "lost", "x", "y");
    assertThat(at.get("y")[0]).isGreaterThan(at.get("x")[0]);
    assertThat(Stream.of("s", "lost", "x").map(id -> at.get(id)[1])).doesNotHaveDuplicates();
  }
}
