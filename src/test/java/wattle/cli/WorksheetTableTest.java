package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code table --of worksheet}. */
class WorksheetTableTest {
  private static final String HOUSE = "examples/alder-court/house.wattle";

  @TempDir
  private Path folder;

  private record Said(int code, String out, String err) {}

  private static Said table(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    List<String> all = new ArrayList<>(List.of("table", "--of", "worksheet"));
    all.addAll(List.of(arguments));
    int code = Main.run(all.toArray(String[]::new), new PrintWriter(out), new PrintWriter(err));
    return new Said(code, out.toString(), err.toString());
  }

  /** Without --method it is the method by which check judges. */
  @Test
  void theServiceByTheDecidingMethod() {
    Said said = table(HOUSE);
    assertThat(said.code).as(said.err).isEqualTo(ExitCode.FINE);
    assertThat(said.out)
        .contains("Optional method for a dwelling, NFPA 70 220.82", "cooking, as rated")
        .contains("service current, leg A", "service current, leg B", "next standard rating", "spare capacity", "a licensed person decide");
  }

  @Test
  void theServiceByTheStandardMethod() {
    Said said = table("--method", "standard", HOUSE);
    assertThat(said.code).as(said.err).isEqualTo(ExitCode.FINE);
    assertThat(said.out)
        .contains("Standard method, NFPA 70 Article 220 Part III", "cooking equipment, column C, 1", "Table 220.55")
        .contains("next standard rating", "spare capacity", "a licensed person decide");
  }

  @Test
  void everyFormat() throws IOException {
    JsonNode document = new ObjectMapper().readTree(table("--format", "json", "--method", "optional", HOUSE).out);
    JsonNode tables = document.get("tables");
    assertThat(tables).hasSize(3);
    JsonNode range = null;
    for (JsonNode row : tables.get(0).get("rows")) {
      range = row.get("values").get("line").asText().equals("cooking, as rated") ? row : range;
    }
    assertThat(range).isNotNull();
    JsonNode connected = document.get("steps").get(range.get("derivations").get("connected-va").intValue());
    assertThat(connected.toString() + document.get("steps").get(connected.get("inputs").get(0).intValue())).contains("kitchen.range");
    assertThat(table("--format", "csv", HOUSE).out).contains("line,article,connected-va,factor-percent,result-va,sum-va,devices\r\n");
    assertThat(table("--format", "md", HOUSE).out).contains("| line | article |");
    Path file = folder.resolve("sheet.md");
    assertThat(table("--method", "standard", "--out", file.toString(), HOUSE).out).isEmpty();
    assertThat(Files.readString(file)).contains("| clothes dryers |");
  }

  @Test
  void aFeederAndAllMethods() {
    assertThat(table("--panel", "G", HOUSE).out).contains("feeder of G", "garage.charger");
    Said compared = table("--compare-methods", HOUSE);
    assertThat(compared.code).isEqualTo(ExitCode.FINE);
    assertThat(compared.out).contains("optional", "220.82", "one dwelling is on 'main'");
  }

  @Test
  void whatCannotBeAsked() {
    assertThat(table("--panel", "Q", HOUSE).err).contains("no panel is called 'Q'; the plan has P, G");
    assertThat(table("--method", "guess", HOUSE).err).contains("no method 'guess'; they have standard, optional");
    assertThat(table("--method", "optional", "--compare-methods", HOUSE).code).isEqualTo(ExitCode.USAGE);
    StringWriter err = new StringWriter();
    String[] other = {"table", "--of", "loads", "--panel", "G", HOUSE};
    assertThat(Main.run(other, new PrintWriter(new StringWriter()), new PrintWriter(err))).isEqualTo(ExitCode.USAGE);
    assertThat(err.toString()).contains("are for --of worksheet");
  }

  @Test
  void whatThePlanLacks() throws IOException {
    Path plan = folder.resolve("house.wattle");
    Files.writeString(plan, "service main 120/240 V 100 A { }\n");
    assertThat(table(plan.toString()).err).contains("names no code");
    Files.writeString(plan, "use code us-2023\nservice main 120/240 V 100 A { }\n");
    Said said = table(plan.toString());
    assertThat(said.code).isEqualTo(ExitCode.FOUND);
    assertThat(said.out).isEmpty();
    assertThat(said.err).contains("dwelling-missing", "house.wattle:2:9", "add a line such as dwelling { floor-area 120 m2 }");
  }
}
