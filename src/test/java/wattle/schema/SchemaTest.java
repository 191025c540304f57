package wattle.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import wattle.cli.Main;
import wattle.compiler.Compiler;
import wattle.emit.document.findings.JsonFindings;
import wattle.emit.document.findings.SarifFindings;
import wattle.finding.Finding;
import wattle.golden.Golden;
import wattle.model.House;
import wattle.read.SourceReader;

/** What the commands print for programs meets the schemas, on every example and on every broken plan. */
class SchemaTest {
  private static final Schema FINDINGS = Schema.ours("findings");
  private static final Schema TABLES = Schema.ours("tables");
  private static final Schema FIGURES = Schema.ours("figures");
  private static final Schema CHANGES = Schema.ours("changes");
  private static final Schema LOCKOUT = Schema.ours("lockout");

  /** OASIS, Static Analysis Results Interchange Format 2.1.0, its JSON schema. */
  private static final Schema SARIF = Schema.sarif();

  private static final List<String> TABLES_OF = List.of("panel", "loads", "runs", "boxes", "materials", "faults", "voltage", "neutral",
      "heat", "rooms");
  private static final List<Path> HOUSES = Golden.plans("examples").stream().filter(p -> p.endsWith("house.wattle")).toList();

  private static final int STEP = 7;

  private static final String ALDER_COURT = "examples/alder-court/house.wattle";

  private static List<Path> plans() {
    List<Path> plans = new ArrayList<>(Golden.plans("examples"));
    plans.addAll(Golden.plans("src/test/resources/plans"));
    assertThat(plans).hasSizeGreaterThan(35);
    return plans;
  }

  /** Standard output of a command, which may end in any way but a refusal. */
  private static JsonNode printed(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    assertThat(code).as(err.toString()).isLessThan(2);
    return Schema.read(out.toString());
  }

  /** Every third house of the examples, and of the many small plans that differ in findings alone each so many-th. */
  private static Stream<DynamicTest> somePlans(java.util.function.Consumer<Path> test) {
    List<Path> plans = plans();
    return IntStream.range(0, plans.size()).filter(i -> HOUSES.indexOf(plans.get(i)) % 3 == 0 || i % STEP == 0).mapToObj(plans::get)
        .map(plan -> DynamicTest.dynamicTest(plan.toString(), () -> test.accept(plan)));
  }

  private static Stream<DynamicTest> eachPlan(java.util.function.Consumer<Path> test) {
    return plans().stream().map(plan -> DynamicTest.dynamicTest(plan.toString(), () -> test.accept(plan)));
  }

  @TestFactory
  Stream<DynamicTest> findings() {
    return eachPlan(p -> assertThat(FINDINGS.objections(printed("check", "--format", "json", p.toString()))).isEmpty());
  }

  @TestFactory
  Stream<DynamicTest> sarif() {
    return somePlans(p -> assertThat(SARIF.objections(printed("check", "--format", "sarif", p.toString()))).isEmpty());
  }

  /** Of a whole folder the documents are one each, and say of every plan what they say of it alone. */
  @Test
  void findingsOfAFolder() {
    JsonNode json = printed("check", "--format", "json", "examples");
    assertThat(FINDINGS.objections(json)).isEmpty();
    JsonNode sarif = printed("check", "--format", "sarif", "examples");
    assertThat(SARIF.objections(sarif)).isEmpty();
    JsonNode run = sarif.at("/runs/0");
    List<JsonNode> findings = new ArrayList<>();
    List<JsonNode> results = new ArrayList<>();
    int plans = 0;
    for (JsonNode judged : json.get("judged")) {
      String plan = judged.get("plan").asText();
      JsonNode alone = printed("check", "--format", "json", plan);
      assertThat(alone.at("/judged/0")).isEqualTo(judged);
      alone.get("findings").forEach(findings::add);
      if (++plans % STEP == 0) { // words of rules take long to read, once for each log
        results.addAll(withoutIndexes(printed("check", "--format", "sarif", plan).at("/runs/0")));
      }
    }
    assertThat(results).hasSizeGreaterThan(5);
    assertThat(json.get("findings")).hasSizeGreaterThan(50).containsExactlyElementsOf(findings);
    assertThat(run.at("/invocations/0/properties/judged")).isEqualTo(json.get("judged"));
    assertThat(withoutIndexes(run)).hasSize(findings.size()).containsSubsequence(results);
  }

  /** Which number a rule has depends on the others of the run; which rule it is does not. */
  private static List<JsonNode> withoutIndexes(JsonNode run) {
    List<JsonNode> results = new ArrayList<>();
    for (JsonNode result : run.get("results")) {
      assertThat(run.at("/tool/driver/rules").get(result.get("ruleIndex").asInt()).get("id")).isEqualTo(result.get("ruleId"));
      ((ObjectNode) result).remove("ruleIndex");
      results.add(result);
    }
    return results;
  }

  @Test
  void whatWasAssumedInAFolder() {
    JsonNode json = printed("check", "--format", "json", "examples/kitchen-renovation", "--assumptions");
    assertThat(FINDINGS.objections(json)).isEmpty();
    JsonNode sarif = printed("check", "--format", "sarif", "examples/kitchen-renovation", "--assumptions");
    assertThat(SARIF.objections(sarif)).isEmpty();
    List<JsonNode> assumed = new ArrayList<>();
    for (String plan : List.of("after", "before")) {
      printed("check", "--format", "json", "examples/kitchen-renovation/" + plan + ".wattle", "--assumptions").get("assumed")
          .forEach(assumed::add);
    }
    assertThat(json.get("assumed")).isNotEmpty().containsExactlyElementsOf(assumed);
    assertThat(sarif.at("/runs/0/invocations/0/properties/assumed")).isEqualTo(json.get("assumed"));
  }

  /** Of a house every table, of a small plan two, each plan others than the one before it. */
  @TestFactory
  Stream<DynamicTest> tables() {
    AtomicInteger turn = new AtomicInteger();
    return somePlans(
        plan -> {
          int first = turn.addAndGet(2);
          for (String of : HOUSES.contains(plan) ? TABLES_OF : List.of(table(first), table(first + 1))) {
            JsonNode tables = printed("table", "--of", of, "--format", "json", plan.toString());
            assertThat(TABLES.objections(tables)).as(of).isEmpty();
            assertStepsStandOnceBehindTheirInputs(tables);
            tables.get("tables").forEach(SchemaTest::assertRowsHaveTheColumns);
          }
        });
  }

  private static String table(int turn) {
    return TABLES_OF.get(turn % TABLES_OF.size());
  }

  @TestFactory
  Stream<DynamicTest> figures() {
    return somePlans(p -> assertThat(FIGURES.objections(printed("explain", p.toString(), "--figures", "--format", "json"))).isEmpty());
  }

  @Test
  void unfoldedFigures() {
    JsonNode figures = printed("explain", ALDER_COURT, "--figure", "counter", "--format", "json");
    assertThat(FIGURES.objections(figures)).isEmpty();
    assertThat(figures.get("figures")).hasSizeGreaterThan(5)
        .allMatch(f -> f.get("derivation").intValue() < figures.get("steps").size());
    assertStepsStandOnceBehindTheirInputs(figures);
    assertThat(TABLES.objections(printed("trial", ALDER_COURT, "--every", "--format", "json"))).isEmpty();
  }

  /** Commands that print tables of another kind. */
  @TestFactory
  Stream<DynamicTest> otherTables() {
    return HOUSES.stream().map(
        house -> DynamicTest.dynamicTest(
            house.toString(),
            () -> {
              List<List<String>> commands = new ArrayList<>(
                  List.of(List.of("balance"), List.of("test-sheet"), List.of("trial", "--stated")));
              if (!house.toString().contains("longcroft")) { // names no code that has methods of load calculation
                commands.add(List.of("table", "--of", "worksheet"));
                commands.add(List.of("table", "--of", "worksheet", "--compare-methods"));
              }
              if (house.toString().equals(ALDER_COURT)) {
                commands.add(List.of("trial", "--add", "vehicle charger 7.7 kW"));
              }
              for (List<String> command : commands) {
                List<String> arguments = new ArrayList<>(command);
                arguments.addAll(List.of("--format", "json", house.toString()));
                JsonNode tables = printed(arguments.toArray(String[]::new));
                assertThat(TABLES.objections(tables)).as(command.toString()).isEmpty();
                tables.get("tables").forEach(SchemaTest::assertRowsHaveTheColumns);
              }
            }));
  }

  /** Of each panel, and of every box, room and branch that comes first. */
  @TestFactory
  Stream<DynamicTest> lockouts() {
    return HOUSES.stream().map(
        house -> DynamicTest.dynamicTest(
            house.toString(),
            () -> {
              House model = new Compiler(SourceReader.FROM_DISK).compile(house).house();
              List<List<String>> places = new ArrayList<>();
              model.panels().keySet().forEach(p -> places.add(List.of("panel", p)));
              model.rooms().keySet().stream().limit(2).forEach(r -> places.add(List.of("room", r)));
              model.branches().keySet().stream().limit(2).forEach(b -> places.add(List.of("branch", b)));
              model.boxes().keySet().stream().limit(2).forEach(b -> places.add(List.of("box", b)));
              for (List<String> place : places) {
                JsonNode lockout = printed("lockout", house.toString(), place.get(0), place.get(1), "--format", "json");
                assertThat(LOCKOUT.objections(lockout)).as(place.toString()).isEmpty();
              }
            }));
  }

  @Test
  void whatIsReadBackFromASheetIsFindings(@TempDir Path folder) throws IOException {
    String house = HOUSES.get(0).toString();
    Path sheet = Files.writeString(folder.resolve("tests.csv"), "test,reading\nno/such/test,1\n");
    JsonNode read = printed("test-sheet", house, "--read", sheet.toString(), "--format", "json");
    assertThat(FINDINGS.objections(read)).isEmpty();
    assertThat(read.get("findings")).isNotEmpty();
  }

  /** Every document that has a schema is named in the table of schemas, and every schema is used here. */
  @Test
  void everySchemaIsInItsTable() throws IOException {
    Path folder = Path.of("src/main/resources/schema");
    String table = Files.readString(folder.resolve("README.md"));
    try (Stream<Path> files = Files.list(folder)) {
      List<String> names = files.map(f -> f.getFileName().toString()).filter(f -> f.endsWith(".json")).sorted().toList();
      assertThat(names).containsExactly("changes.schema.json", "figures.schema.json", "findings.schema.json", "lockout.schema.json",
          "plan.schema.json", "tables.schema.json");
      assertThat(names).allMatch(n -> table.contains("`" + n + "`"));
    }
  }

  private static void assertStepsStandOnceBehindTheirInputs(JsonNode document) {
    Set<JsonNode> seen = new HashSet<>();
    for (JsonNode step : document.get("steps")) {
      if (step.has("inputs")) {
        assertThat(step.get("inputs")).allMatch(input -> input.intValue() < seen.size());
      }
      assertThat(seen.add(step)).as(step.toString()).isTrue();
    }
  }

  /** A relation that no schema can state: every row has a value for each column, and for nothing else. */
  private static void assertRowsHaveTheColumns(JsonNode table) {
    List<String> keys = new ArrayList<>();
    table.get("columns").forEach(column -> keys.add(column.get("key").asText()));
    assertThat(keys).doesNotHaveDuplicates();
    for (JsonNode row : table.get("rows")) {
      assertThat(row.get("values").fieldNames()).toIterable().containsExactlyElementsOf(keys);
      if (row.has("derivations")) {
        assertThat(row.get("derivations").fieldNames()).toIterable().isSubsetOf(keys);
      }
    }
  }

  @TestFactory
  Stream<DynamicTest> changes() {
    return somePlans(
        plan -> {
          for (Path house : HOUSES.subList(0, 2)) { // one rich in everything, one of a few rooms
            JsonNode changes = printed("compare", "--format", "json", plan.toString(), house.toString());
            assertThat(CHANGES.objections(changes)).isEmpty();
            assertStepsStandOnceBehindTheirInputs(changes);
          }
        });
  }

  private static List<Finding> silenced() throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/broken/ten-mistakes.wattle")).findings().stream()
        .map(f -> f.silencedBecause("the <inspector> said \"so\", in writing"))
        .toList();
  }

  private static String sarif(List<Finding> findings) {
    return SarifFindings.render(findings, List.of(), List.of(), Map.of(), Path.of(""), "1");
  }

  @Test
  void silencedFindingsAreSuppressedResults() throws SourceReader.Unreadable {
    JsonNode log = Schema.read(sarif(silenced()));
    assertThat(SARIF.objections(log)).isEmpty();
    JsonNode results = log.at("/runs/0/results");
    assertThat(results).hasSize(10);
    for (JsonNode result : results) {
      assertThat(result.at("/suppressions/0/kind").asText()).isEqualTo("inSource");
      assertThat(result.at("/suppressions/0/justification").asText()).isEqualTo("the <inspector> said \"so\", in writing");
    }
    assertThat(FINDINGS.objections(Schema.read(JsonFindings.render(silenced())))).isEmpty();
  }

  /** A schema that accepts everything would pass the tests above. */
  @Test
  void spoiltDocumentsAreRefused() throws SourceReader.Unreadable {
    String plan = "examples/broken/shared-neutral-same-leg.wattle";
    assertRefused(FINDINGS, printed("check", "--format", "json", plan), "/findings/0", "severity", "color");
    assertRefused(FINDINGS, printed("check", "--format", "json", plan), "/findings/0/place", "line", "words2");
    assertRefused(SARIF, Schema.read(sarif(silenced())), "/runs/0/results/0", "message", "color");
    assertRefused(SARIF, Schema.read(sarif(silenced())), "/runs/0/results/0/suppressions/0", "kind", "x");
    String house = HOUSES.get(0).toString();
    assertRefused(TABLES, printed("table", "--of", "runs", "--format", "json", house), "/tables/0/rows/0", "values", "x");
    assertRefused(TABLES, printed("table", "--of", "runs", "--format", "json", house), "/tables/0", "columns", "x");
    assertRefused(TABLES, printed("table", "--of", "runs", "--format", "json", house), "/steps/0", "basis", "x");
    assertRefused(FIGURES, printed("explain", ALDER_COURT, "--figure", "neutral of counter", "--format", "json"), "/figures/0", "shown",
        "x");
    JsonNode lockout = printed("lockout", ALDER_COURT, "kitchen.c1", "--format", "json");
    assertRefused(LOCKOUT, lockout, "", "caution", "x");
    assertRefused(LOCKOUT, lockout, "/handles/0", "tag", "x");
    assertRefused(LOCKOUT, lockout, "/proofs/0/readings/0", "to", "x");
    assertRefused(CHANGES, printed("compare", "--format", "json", plan, house), "/changes/0", "kind", "x");
    assertRefused(CHANGES, printed("compare", "--format", "json", plan, house), "/gone/0", "rule", "x");
  }

  private static void assertRefused(Schema schema, JsonNode good, String at, String needed, String unknown) {
    assertThat(schema.objections(good)).isEmpty();
    JsonNode without = good.deepCopy();
    ((ObjectNode) without.at(at)).remove(needed);
    assertThat(schema.objections(without)).as("%s without %s", at, needed).isNotEmpty();
    JsonNode more = good.deepCopy();
    ((ObjectNode) more.at(at)).put(unknown, 1);
    assertThat(schema.objections(more)).as("%s with %s", at, unknown).isNotEmpty();
  }
}
