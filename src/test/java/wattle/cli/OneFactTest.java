package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A fault at many places alike is one finding with its places, counted once, in whatever form it is shown. */
class OneFactTest {
  private static final String SIX = "src/test/resources/plans/findings/facts/six-alike.wattle";

  private static final String FLATS = """
      plan "Block of forty" revision "A"
      use code us-2023
      service main 120/240 V 600 A {
        source transformer 150 kVA 2 %
        run 10 m of 3 in RMC with 3 x 500 kcmil Cu THWN
        earth rod by 6 Cu 20 ohm
      }
      panel M "Meter stack" from main {
        bus 800 A   slots 84   bonded
        main breaker 600 A 42 kA
        (n)  15 A 42 kA  arc-fault  hall{n}  "Hall" for n from 1 to 40
      }
      pattern hall(n) {
        branch hall by 14/2 NM-B { M --9 m-- hall.r }
        room hall is living { r: receptacle 20 in3 }
      }
      place hall(n) as hall{n} for n from 1 to 40
      """;

  @TempDir
  private Path folder;

  private static String run(String... arguments) {
    StringWriter out = new StringWriter();
    Main.run(arguments, new PrintWriter(out), new PrintWriter(new StringWriter()));
    return out.toString();
  }

  private static List<JsonNode> of(String rule, JsonNode findings, String key) {
    return StreamSupport.stream(findings.spliterator(), false).filter(f -> f.get(key).asText().equals(rule)).toList();
  }

  @Test
  void sixReceptaclesAlikeAreOneFactInJson() throws IOException {
    JsonNode findings = new ObjectMapper().readTree(run("check", "--format", "json", SIX)).get("findings");
    List<JsonNode> pins = of("ground-pin-without-ground", findings, "rule");
    assertThat(pins).hasSize(1);
    JsonNode places = pins.get(0).get("places");
    assertThat(places.findValuesAsText("name")).containsExactly("left.r1", "left.r2", "left.r3", "left.r4", "left.r5", "left.r6",
        "right.r1", "right.r2", "right.r4");
    assertThat(places).extracting(p -> p.get("line").asText() + ":" + p.get("column").asText()).doesNotHaveDuplicates().hasSize(9);
    assertThat(pins.get(0).get("place").get("column")).isEqualTo(places.get(0).get("column"));
    assertThat(of("breaker-above-conductor", findings, "rule")).as("once, whatever the number of its runs").hasSize(1);
  }

  @Test
  void sarifKeepsEveryPlaceAsALocation() throws IOException {
    JsonNode results = new ObjectMapper().readTree(run("check", "--format", "sarif", SIX)).get("runs").get(0).get("results");
    List<JsonNode> pins = of("ground-pin-without-ground", results, "ruleId");
    assertThat(pins).hasSize(1);
    assertThat(pins.get(0).get("locations")).hasSize(9);
  }

  @Test
  void factsAreCountedAndNotPlaces() {
    assertThat(run("check", SIX)).contains("\n2 errors, 1 warning, 2 pieces of advice in ")
        .contains("; the same at left.r2 … left.r6, right.r1, right.r2, right.r4");
    assertThat(run("permit", SIX)).contains("2 errors, 1 warning,");
  }

  @Test
  void whatDiffersInAFigureIsAnotherFact() throws IOException {
    Path plan = folder.resolve("two.wattle");
    Files.writeString(plan, Files.readString(Path.of(SIX)).replace("2  15 A", "2  20 A"));
    List<JsonNode> above = of("breaker-above-conductor",
        new ObjectMapper().readTree(run("check", "--format", "json", plan.toString())).get("findings"), "rule");
    assertThat(above).extracting(f -> f.get("headline").asText()).containsExactly("circuit 'left' is too small for its fuse: 14 AWG"
        + " copper on 30 A",
        "circuit 'right' is too small for its fuse: 14 AWG copper on 20 A");
  }

  @Test
  void fortyFlatsAreOneFactWithForty() throws IOException {
    Path plan = folder.resolve("flats.wattle");
    Files.writeString(plan, FLATS);
    List<JsonNode> missing = of("tamper-resistance-missing",
        new ObjectMapper().readTree(run("check", "--format", "json", plan.toString())).get("findings"), "rule");
    assertThat(missing).hasSize(1);
    assertThat(missing.get(0).get("places")).hasSize(40);
    assertThat(missing.get(0).get("headline").asText()).endsWith("hall1.r; the same at hall2.r … hall40.r");
  }

  @Test
  void aComparisonCountsFactsToo() throws IOException {
    Path mended = folder.resolve("mended.wattle");
    Files.writeString(mended, Files.readString(Path.of(SIX)).replace("by 14/2 NM existing", "by 14/2 NM-B existing"));
    assertThat(run("compare", SIX, mended.toString()).lines().filter(l -> l.contains("ground-pin-without-ground"))).hasSize(1);
    JsonNode gone = new ObjectMapper().readTree(run("compare", "--format", "json", SIX, mended.toString())).get("gone");
    assertThat(of("ground-pin-without-ground", gone, "rule").get(0).get("at")).hasSize(9);
  }
}
