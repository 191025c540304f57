package wattle.emit.media.graphviz;

import static guru.nidi.graphviz.model.Factory.mutGraph;
import static guru.nidi.graphviz.model.Factory.mutNode;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import guru.nidi.graphviz.attribute.Label;
import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
import guru.nidi.graphviz.engine.GraphvizException;
import guru.nidi.graphviz.engine.Options;
import guru.nidi.graphviz.engine.Rasterizer;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class DotEngineTest {
  private final DotEngine engine = DotEngine.builtIn();

  @Test
  void drawsNodesAndEdgesOfAGraph() throws Exception {
    Rendering drawn = engine.svg(mutGraph("panel").setDirected(true)
        .add(mutNode("P").addLink(mutNode("hall")), mutNode("P").addLink(mutNode("kitchen"))));

    Document svg = xml(drawn.text());
    assertThat(texts(svg)).containsExactlyInAnyOrder("P", "hall", "kitchen");
    assertThat(groupsOfClass(svg, "node")).isEqualTo(3);
    assertThat(groupsOfClass(svg, "edge")).isEqualTo(2);
    assertThat(drawn.warnings()).isEmpty();
  }

  @Test
  void laysOutEachRankBelowTheOneBefore() {
    String plain = engine.render("digraph { a -> b -> c }", Engine.DOT, Format.PLAIN).text();

    assertThat(height(plain, "a")).isGreaterThan(height(plain, "b"));
    assertThat(height(plain, "b")).isGreaterThan(height(plain, "c"));
  }

  @Test
  void keepsTheSizeGivenToANode() {
    String plain = engine.render(
        "digraph { a [shape=box fixedsize=true width=2.5 height=0.75] }", Engine.DOT, Format.PLAIN).text();

    assertThat(plain).containsPattern("node a \\S+ \\S+ 2.5 0.75 ");
  }

  @Test
  void givesTheSameBytesEachTime() {
    String dot = "digraph { subgraph cluster_k { label=kitchen; c1 -> c2 } P -> c1; P -> lamp }";
    String first = engine.render(dot, Engine.DOT, Format.SVG).text();
    engine.render("digraph { other -> graph_; }", Engine.DOT, Format.SVG);

    assertThat(engine.render(dot, Engine.DOT, Format.SVG).text()).isEqualTo(first);
    assertThat(new WasmEngine().render(dot, Engine.DOT, Format.SVG).text()).isEqualTo(first);
  }

  @Test
  void saysWhatIsWrongWithAGraphAndDrawsTheNext() {
    assertThatThrownBy(() -> engine.render("digraph { a -> ", Engine.DOT, Format.SVG))
        .isInstanceOf(GraphvizException.class)
        .hasMessageContaining("cannot read the graph")
        .hasMessageContaining("syntax error in line 1");
    assertThatThrownBy(() -> engine.render("digraph { a\0b }", Engine.DOT, Format.SVG))
        .isInstanceOf(GraphvizException.class)
        .hasMessageContaining("U+0000");

    assertThat(engine.render("digraph { good }", Engine.DOT, Format.SVG).text()).contains(">good<");
  }

  @Test
  void remarksOfGraphvizAreKeptApartFromThePicture() {
    Rendering drawn = engine.render("digraph { a [shape=nonesuch] }", Engine.DOT, Format.SVG);

    assertThat(drawn.warnings()).hasSize(1).first().asString().contains("nonesuch");
    assertThat(drawn.text()).contains("</svg>");
    assertThat(engine.render("digraph { a }", Engine.DOT, Format.SVG).warnings()).isEmpty();
  }

  @Test
  void hostileLabelsStayText() throws Exception {
    for (String label : List.of("<script>alert(1)</script>", "]]>", "\"quoted\"", "a&b", "&amp;", "ends in \\",
        "\"]; evil [label=\"x", "Ω 5 mm² 😀 \u202E", "=HYPERLINK(\"x\")")) {
      String svg = engine.svg(mutGraph("g").add(mutNode("n").add(Label.of(label)))).text();

      assertThat(texts(xml(svg))).hasSize(1);
      assertThat(svg).doesNotContain("<script");
    }
  }

  @Test
  void drawsAGraphThatIsTooDeepForTheStackOfTheCaller() throws Exception {
    StringBuilder chain = new StringBuilder("digraph {");
    for (int i = 0; i < 1000; i++) {
      chain.append("n").append(i).append("->n").append(i + 1).append(';');
    }
    String dot = chain.append('}').toString();

    assertThatThrownBy(() -> onSmallStack(() -> GraphvizInstance.start().render(dot, "twopi", "plain")))
        .hasMessageContaining("stack");
    Rendering drawn = onSmallStack(() -> engine.render(dot, Engine.TWOPI, Format.PLAIN));
    assertThat(drawn.text().lines().filter(line -> line.startsWith("node "))).hasSize(1001);
  }

  @Test
  void refusesWhatIsTooDeepForTheStackOfTheCode() {
    for (int depth = 84; depth < 100; depth += 4) {
      String dot = nestedTables(depth);
      assertThatThrownBy(() -> engine.render(dot, Engine.DOT, Format.SVG)).isInstanceOf(GraphvizException.class);
    }
  }

  private static String nestedTables(int depth) {
    return "digraph { deep [label=<" + "<table><tr><td>".repeat(depth) + "x" + "</td></tr></table>".repeat(depth)
        + ">] }";
  }

  private static <T> T onSmallStack(Callable<T> call) throws Exception {
    FutureTask<T> task = new FutureTask<>(call);
    new Thread(null, task, "small stack", 200 << 10).start();
    return task.get();
  }

  @Test
  void servesSeveralThreadsAtOnce() throws Exception {
    WasmEngine fresh = new WasmEngine();
    fresh.warmUp();
    ExecutorService threads = Executors.newFixedThreadPool(4);
    try {
      List<Callable<String>> tasks = new ArrayList<>();
      for (int i = 0; i < 16; i++) {
        String dot = i % 5 == 4 ? "digraph { broken" : "digraph { a" + i + " -> b" + i + " }";
        tasks.add(() -> fresh.render(dot, Engine.DOT, Format.SVG).text());
      }
      List<Future<String>> results = threads.invokeAll(tasks);
      for (int i = 0; i < results.size(); i++) {
        Future<String> result = results.get(i);
        if (i % 5 == 4) {
          assertThatThrownBy(result::get).hasCauseInstanceOf(GraphvizException.class);
        } else {
          assertThat(result.get()).contains(">a" + i + "<", ">b" + i + "<");
        }
      }
    } finally {
      threads.shutdown();
    }
  }

  @Test
  void isAnEngineOfGraphvizJava() throws Exception {
    Options options = Options.create().engine(Engine.CIRCO).format(Format.PLAIN);

    assertThat(engine.execute("graph { a -- b }", options, Rasterizer.NONE).asString()).startsWith("graph 1 ");
    assertThatThrownBy(() -> engine.execute("graph { a }", options.format(Format.PNG), Rasterizer.NONE))
        .isInstanceOf(GraphvizException.class)
        .hasMessageContaining("SVG");
  }

  private static double height(String plain, String node) {
    return plain.lines().filter(line -> line.startsWith("node " + node + " ")).findFirst()
        .map(line -> Double.valueOf(line.split(" ")[3])).orElseThrow();
  }

  private static Document xml(String svg) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
    return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
  }

  private static List<String> texts(Document svg) {
    NodeList nodes = svg.getElementsByTagName("text");
    List<String> found = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      found.add(nodes.item(i).getTextContent());
    }
    return found;
  }

  private static long groupsOfClass(Document svg, String name) {
    NodeList nodes = svg.getElementsByTagName("g");
    long found = 0;
    for (int i = 0; i < nodes.getLength(); i++) {
      if (name.equals(nodes.item(i).getAttributes().getNamedItem("class").getNodeValue())) {
        found++;
      }
    }
    return found;
  }
}
