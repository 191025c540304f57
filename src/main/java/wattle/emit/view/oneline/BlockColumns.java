package wattle.emit.view.oneline;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Places blocks in columns: in the first what nothing feeds, which are the services and, in a plan with errors, panels without a supply;
 * in each further one what the column before it feeds. A block stands so that its feeder runs straight, or as far beneath as those above it
 * need. Where feeders run in a circle, which is a finding, the first panel of the circle stands in the first column.
 */
final class BlockColumns {
  static final double BETWEEN_BLOCKS = 36;

  /** Least room between two columns, for the upright parts of feeders. */
  private static final double BETWEEN_COLUMNS = 60;

  private final Map<String, List<Link>> onward = new HashMap<>();
  private final List<List<Block>> columns = new ArrayList<>();

  /**
   * @param blocks in the order of the plan
   * @param links from the top of what feeds to its bottom
   */
  BlockColumns(List<Block> blocks, List<Link> links) {
    links.forEach(l -> onward.computeIfAbsent(l.from().id(), id -> new ArrayList<>()).add(l));
    Set<String> fed = links.stream().map(l -> l.to().id()).collect(Collectors.toSet());
    Set<String> reached = new HashSet<>();
    List<Block> first = new ArrayList<>();
    Stream.concat(blocks.stream().filter(b -> !fed.contains(b.id())), blocks.stream().filter(b -> fed.contains(b.id())))
        .filter(b -> !reached.contains(b.id()))
        .forEach(b -> {
          first.add(b);
          reach(b, reached);
        });
    Set<String> placed = first.stream().map(Block::id).collect(Collectors.toCollection(HashSet::new));
    for (List<Block> column = first; !column.isEmpty();) {
      columns.add(column);
      column = column.stream().flatMap(b -> onward(b).stream()).map(Link::to).filter(b -> placed.add(b.id())).toList();
    }
  }

  private void reach(Block from, Set<String> reached) {
    Deque<Block> next = new ArrayDeque<>(List.of(from));
    while (!next.isEmpty()) {
      Block block = next.pop();
      if (reached.add(block.id())) {
        onward(block).forEach(l -> next.push(l.to()));
      }
    }
  }

  private List<Link> onward(Block block) {
    return onward.getOrDefault(block.id(), List.of());
  }

  /** Room between two columns: each feeder that comes to a column needs a track of its own. */
  double between() {
    int most = columns.stream().skip(1).mapToInt(List::size).max().orElse(0);
    return Math.max(BETWEEN_COLUMNS, Feeders.room(most));
  }

  /** Upper left corner of each block, by its id. */
  Map<String, double[]> corners() {
    Map<String, double[]> corners = new HashMap<>();
    double x = 0;
    for (List<Block> column : columns) {
      for (Block block : column) {
        corners.put(block.id(), new double[]{x, 0});
      }
      x += column.stream().mapToDouble(Block::width).max().orElse(0) + between();
    }
    first(corners);
    align(corners);
    return corners;
  }

  /** Each so far beneath the one before it that what it feeds can stand beneath what that feeds. */
  private void first(Map<String, double[]> corners) {
    double free = 0;
    double freeBeside = Double.NEGATIVE_INFINITY;
    for (Block block : columns.isEmpty() ? List.<Block>of() : columns.get(0)) {
      double beside = freeBeside;
      double straight = onward(block).stream().findFirst().map(l -> beside + l.to().entry() - l.exit().height()).orElse(free);
      double top = Math.max(free, straight);
      corners.get(block.id())[1] = top;
      free = top + block.height() + BETWEEN_BLOCKS;
      for (Link link : onward(block)) {
        freeBeside = Math.max(freeBeside, top + link.exit().height() - link.to().entry()) + link.to().height() + BETWEEN_BLOCKS;
      }
    }
  }

  /** Sets the blocks of each column, wherever they were, at its left edge and as high as their feeders are. */
  void align(Map<String, double[]> corners) {
    for (int i = 0; i < columns.size(); i++) {
      List<Block> column = columns.get(i);
      double left = column.stream().mapToDouble(b -> corners.get(b.id())[0]).min().orElseThrow();
      column.forEach(b -> corners.get(b.id())[0] = left);
      if (i > 0) {
        heights(columns.get(i - 1), column, corners);
      }
    }
  }

  private void heights(List<Block> above, List<Block> column, Map<String, double[]> corners) {
    ToDoubleFunction<Link> straight = l -> corners.get(l.from().id())[1] + l.exit().height() - l.to().entry();
    Set<String> here = column.stream().map(Block::id).collect(Collectors.toSet());
    List<Link> ordered = above.stream().flatMap(b -> onward(b).stream()).filter(l -> here.contains(l.to().id()))
        .sorted(Comparator.comparingDouble(straight)).toList();
    double free = Double.NEGATIVE_INFINITY;
    for (Link link : ordered) {
      double top = Math.max(free, straight.applyAsDouble(link));
      corners.get(link.to().id())[1] = top;
      free = top + link.to().height() + BETWEEN_BLOCKS;
    }
  }
}
