package wattle.schema;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.cli.Main;
import wattle.golden.Golden;

/** {@code export}: every example meets the published schema, ids lead to things, and figures are those of {@code table}. */
class PlanExportTest {
  private static final Schema PLAN = Schema.ours("plan");
  private static final String ALDER_COURT = "examples/alder-court/house.wattle";
  /** 120/208 V three-phase with several services and dwellings; 230 V; existing work. */
  private static final List<String> HOUSES = Golden.plans("examples").stream().filter(p -> p.endsWith("house.wattle")).map(Path::toString)
      .toList();

  private static JsonNode printed(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(err))).as(err.toString()).isLessThan(2);
    return Schema.read(out.toString());
  }

  private static JsonNode export(String plan) {
    return printed("export", plan, "--format", "json");
  }

  @TestFactory
  Stream<DynamicTest> everyExampleMeetsTheSchema() {
    return Golden.plans("examples").stream().map(p -> DynamicTest.dynamicTest(p.toString(), () -> {
      JsonNode plan = export(p.toString());
      assertThat(PLAN.objections(plan)).isEmpty();
      // What a plan that is whole names is there, each id once.
      if (plan.get("completeness").asText().equals("sound")) {
        assertIdsLeadToThings(plan);
      }
    }));
  }

  private static void assertIdsLeadToThings(JsonNode plan) {
    Set<String> ids = new HashSet<>();
    for (String kind : List.of("services", "panels", "branches", "rooms", "boxes", "devices")) {
      Set<String> ofKind = new HashSet<>();
      plan.get(kind).forEach(t -> assertThat(ofKind.add(t.get("id").asText())).as(kind + " " + t.get("id")).isTrue());
      ids.addAll(ofKind);
    }
    plan.findValues("breakers").forEach(list -> list.forEach(b -> assertThat(ids.add(b.get("id").asText())).isTrue()));
    for (String key : List.of("branch", "panel", "breaker", "box", "room", "service")) {
      plan.findValues(key).forEach(name -> assertThat(ids).contains(name.asText()));
    }
    for (String key : List.of("devices", "boxes", "branches")) {
      plan.findValues(key).forEach(list -> list.forEach(name -> {
        if (name.isTextual()) {
          assertThat(ids).contains(name.asText());
        }
      }));
    }
  }

  @Test
  void aSchemaThatAcceptsEverythingWouldPassToo() {
    for (String spoilt : List.of("/services/0/system/kind", "/panels/0/breakers/0/handle", "/findings",
        "/branches/0/voltages/0/nominalVolts")) {
      JsonNode plan = export(ALDER_COURT);
      int slash = spoilt.lastIndexOf('/');
      assertThat(plan.at(spoilt).isMissingNode()).as(spoilt).isFalse();
      ((ObjectNode) plan.at(spoilt.substring(0, slash))).put(spoilt.substring(slash + 1), "rhubarb");
      assertThat(PLAN.objections(plan)).as(spoilt).isNotEmpty();
    }
    JsonNode more = export(ALDER_COURT);
    ((ObjectNode) more.at("/devices/0")).put("rhubarb", 1);
    assertThat(PLAN.objections(more)).isNotEmpty();
  }

  /** The tables are made by other classes, so that a figure under a wrong name or of a wrong thing would differ. */
  @TestFactory
  Stream<DynamicTest> figuresAreThoseOfTheTables() {
    return HOUSES.stream().map(house -> DynamicTest.dynamicTest(house, () -> {
      JsonNode plan = export(house);
      assertAlike(plan, house, "loads", "branches", "name", "/connectedLoad/voltAmperes", "load-va");
      assertAlike(plan, house, "loads", "branches", "name", "/connectedLoad/heaviestHotAmperes", "current-a");
      assertAlike(plan, house, "boxes", "boxes", "box", "/fillCubicInches", "needed-in3");
      for (JsonNode row : rows(house, "faults")) {
        if (row.get("row").asText().equals("panel")) {
          JsonNode point = named(plan.get("panels"), row.get("name").asText());
          for (String kind : List.of("three-phase", "line-line", "line-neutral", "line-ground")) {
            JsonNode fault = stream(point.get("faultCurrents")).filter(f -> f.get("between").asText().equals(kind)).findFirst()
                .orElse(MissingNode.getInstance());
            assertSame(fault.at("/mostAmperes"), row.get(kind + "-most-a"), row);
            assertSame(fault.at("/leastAmperes"), row.get(kind + "-least-a"), row);
          }
        }
      }
      for (JsonNode row : rows(house, "voltage")) {
        JsonNode branch = named(plan.get("branches"), row.get("branch").asText());
        // A range has one name between legs and to the neutral.
        assertThat(stream(branch.get("voltages"))).anySatisfy(v -> {
          assertThat(v.get("outlet")).isEqualTo(row.get("outlet"));
          assertSame(v.at("/nominalVolts"), row.get("nominal-v"), row);
          assertSame(v.at("/fullLoadFallPercent"), row.get("full-load-fall-percent"), row);
          assertSame(v.at("/statedLoadsVolts"), row.get("stated-v"), row);
        });
      }
      for (JsonNode row : rows(house, "runs")) {
        if (row.get("row").asText().equals("branch")) {
          String id = row.get("name").asText() + " from " + row.get("from").asText() + " to " + row.get("to").asText();
          JsonNode run = stream(named(plan.get("branches"), row.get("name").asText()).get("runs"))
              .filter(r -> r.get("id").asText().equals(id))
              .findFirst().orElseThrow();
          assertSame(run.at("/ampacityAmperes"), row.get("ampacity-a"), row);
          assertSame(run.at("/betweenTerminalsAmperes"), row.get("terminals-a"), row);
          assertSame(run.at("/lengthMeters"), row.get("length-m"), row);
        }
      }
    }));
  }

  private static void assertAlike(JsonNode plan, String house, String table, String kind, String key, String at, String column) {
    int compared = 0;
    for (JsonNode row : rows(house, table)) {
      boolean ofKind = !row.has("row") || row.get("row").asText().equals("branch");
      if (ofKind && row.has(column)) {
        assertSame(named(plan.get(kind), row.get(key).asText()).at(at), row.get(column), row);
        compared++;
      }
    }
    assertThat(compared).as(table + " of " + house).isPositive();
  }

  private static void assertSame(JsonNode exported, JsonNode shown, JsonNode row) {
    assertThat(exported.isMissingNode()).as(row.toString()).isEqualTo(shown == null || shown.isNull());
    if (!exported.isMissingNode()) {
      assertThat(exported.asDouble()).as(row.toString()).isCloseTo(shown.asDouble(),
          within(1e-6 * Math.max(1, Math.abs(shown.asDouble()))));
    }
  }

  private static JsonNode named(JsonNode things, String id) {
    return stream(things).filter(t -> t.get("id").asText().equals(id)).findFirst().orElseThrow(() -> new AssertionError("no " + id));
  }

  private static Stream<JsonNode> stream(JsonNode array) {
    Stream.Builder<JsonNode> all = Stream.builder();
    array.forEach(all);
    return all.build();
  }

  /** Rows of a table, whose CSV has the keys of the columns and all digits, without how each figure is calculated. */
  /** Rows of the first of the tables that are printed. */
  private static List<JsonNode> rows(String house, String table) {
    StringWriter out = new StringWriter();
    assertThat(
        Main.run(new String[]{"table", "--of", table, "--format", "csv", house}, new PrintWriter(out), new PrintWriter(new StringWriter())))
        .isLessThan(2);
    List<JsonNode> rows = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(out.toString().split("\r?\n\r?\n")[0],
        CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get())) {
      for (CSVRecord record : parser) {
        ObjectNode row = JsonNodeFactory.instance.objectNode();
        record.toMap().forEach((key, cell) -> row.put(key, cell.isEmpty() ? null : cell));
        rows.add(row);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    assertThat(rows).isNotEmpty();
    return rows;
  }

  /**
   * By hand. Legs A and B of a 40-slot panel with odd numbers left change row by row: slots 1 and 2 are on A, 3 and 4 on B. 12/3 NM-B
   * is copper 12 AWG, 20 A by NFPA 70 240.4(D). The neutral of a multiwire circuit carries at most what one leg draws, 20 A.
   */
  @Test
  void figuresByHand() {
    JsonNode plan = export(ALDER_COURT);
    JsonNode counter = named(plan.at("/panels/0/breakers"), "P/2+4");
    assertThat(counter.at("/poles/0/leg").asText() + counter.at("/poles/1/leg").asText()).isEqualTo("AB");
    assertThat(counter.at("/handle").asText()).isEqualTo("common-trip");
    assertThat(counter.at("/ratingAmperes").asDouble()).isEqualTo(20);
    assertThat(counter.at("/feeds/branch").asText()).isEqualTo("counter");
    JsonNode branch = named(plan.get("branches"), "counter");
    assertThat(branch.at("/sharedNeutral/mostAmperes").asDouble()).isCloseTo(20, within(0.01));
    assertThat(branch.at("/wiring/wires/0/size").asText()).isEqualTo("12 AWG");
    assertThat(plan.at("/services/0/calculatedLoad/amperes").asDouble())
        .isCloseTo(plan.at("/services/0/calculatedLoad/voltAmperes").asDouble() / 240, within(0.01));
  }
}
