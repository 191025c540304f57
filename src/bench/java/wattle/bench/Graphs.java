package wattle.bench;

/** Graphs of a size that plans have. */
final class Graphs {

  /** Rooms as clusters, outlets as nodes with a small table for a label, a tree of labeled runs over all of them. */
  static String rooms(int rooms, int outlets) {
    StringBuilder dot = new StringBuilder("digraph { node [shape=plain fontname=\"DejaVu Sans\"];\n");
    for (int room = 0; room < rooms; room++) {
      dot.append("subgraph cluster_").append(room).append(" { label=\"room ").append(room).append("\";\n");
      for (int outlet = 0; outlet < outlets; outlet++) {
        dot.append("n").append(room * outlets + outlet).append(" [label=<<table><tr><td>outlet ").append(outlet)
            .append("</td><td>15 A</td></tr></table>>];\n");
      }
      dot.append("}\n");
    }
    for (int i = 1; i < rooms * outlets; i++) {
      dot.append("n").append(i / 3).append(" -> n").append(i).append(" [label=\"").append(i).append(" m\"];\n");
    }
    return dot.append("}\n").toString();
  }

  private Graphs() {}
}
