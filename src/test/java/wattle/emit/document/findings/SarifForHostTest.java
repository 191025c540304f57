package wattle.emit.document.findings;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.FindingWords;
import wattle.finding.Finding;
import wattle.read.Repository;
import wattle.read.SourceReader;

/**
 * What a code host needs of a log, by SARIF 2.1.0: addresses within the repository (3.4.4), rules in words (3.49), fingerprints
 * (3.27.17).
 */
class SarifForHostTest {
  private static final String PLAN = """
      plan "Shed" revision "A"
      use code us-2023
      service main 120/240 V 100 A { source available 10 kA  run 3 m of 2 Al SER  earth rods by 6 Cu 25 ohm }
      panel P "P" from main { bus 100 A slots 20 bonded main breaker 100 A 22 kA
        1 30 A arc-fault hall "Hall"
      }
      branch hall by 14/2 NM-B { P --5 m-- hall.r }
      room hall { r: receptacle tamper-resistant }
      """;

  @TempDir
  Path folder;

  private JsonNode log(Path plan) throws IOException, SourceReader.Unreadable {
    Compilation compilation = new Compiler(SourceReader.FROM_DISK).compile(plan);
    List<Finding> findings = compilation.facts();
    List<String> names = findings.stream().map(Finding::rule).distinct().toList();
    Path root = Repository.of(plan).orElse(folder);
    return new ObjectMapper().readTree(
        SarifFindings.render(findings, List.of(), List.of(), FindingWords.of(names, List.of(compilation)), root, "1")).at("/runs/0");
  }

  @Test
  void addressesAreWithinTheRepository() throws Exception {
    Files.createDirectories(folder.resolve("repository/.git"));
    Path plan = Files.createDirectories(folder.resolve("repository/plans of shed")).resolve("a b.wattle");
    Files.writeString(plan, PLAN);
    JsonNode run = log(plan);
    assertThat(run.at("/originalUriBaseIds/REPOSITORY/uri").asText()).startsWith("file:/").endsWith("/repository/");
    assertThat(run.at("/results")).isNotEmpty();
    for (JsonNode result : run.at("/results")) {
      JsonNode artifact = result.at("/locations/0/physicalLocation/artifactLocation");
      assertThat(artifact.at("/uri").asText()).isEqualTo("plans%20of%20shed/a%20b.wattle");
      assertThat(artifact.at("/uriBaseId").asText()).isEqualTo("REPOSITORY");
    }
  }

  @Test
  void everyRuleIsSaidInWords() throws Exception {
    Path plan = Files.writeString(folder.resolve("shed.wattle"), PLAN.replace("hall.r }", "hall.q }") + "room den { x: rhubarb }\n");
    JsonNode rules = log(plan).at("/tool/driver/rules");
    assertThat(rules).hasSizeGreaterThan(2);
    for (JsonNode rule : rules) {
      assertThat(rule.at("/shortDescription/text").asText()).as(rule.at("/id").asText()).isNotBlank();
      assertThat(rule.at("/fullDescription/text").asText()).isNotBlank();
      assertThat(rule.at("/help/text").asText()).contains(rule.at("/id").asText());
    }
  }

  /** A host tells by the fingerprint that a fault is the one of before, though lines were put in above it and figures changed. */
  @Test
  void aFaultIsTheSameAfterOtherLinesChanged() throws Exception {
    Path plan = Files.writeString(folder.resolve("shed.wattle"), PLAN);
    Set<String> before = fingerprints(log(plan));
    Files.writeString(plan, "// a note\n// and another\n" + PLAN.replace("--5 m--", "--4 m--"));
    assertThat(before).isNotEmpty().isEqualTo(fingerprints(log(plan)));
    Files.writeString(plan, PLAN.replace("1 30 A", "1 15 A"));
    assertThat(fingerprints(log(plan))).as("a cured fault is gone").isNotEqualTo(before);
  }

  private static Set<String> fingerprints(JsonNode run) {
    Set<String> found = new TreeSet<>();
    run.at("/results").forEach(r -> found.add(r.at("/partialFingerprints/ofSubject~1v1").asText()));
    return found;
  }
}
