package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.read.SourceReader;

/**
 * Lawful invented houses, and faults that are seeded in them: a line of {@code NAME.faults} has the finding with its thing, and pairs of
 * texts, what stands in {@code NAME.wattle} once and what becomes of it. The house as it is has no error and no warning; each fault is
 * found alone, and with all the others beside it.
 */
class SeededFaultsTest {
  private static final Path HOUSES = Path.of("src/test/resources/plans/seeded");

  private record Fault(String finding, List<String> texts) {
    static Fault of(String line) {
      List<String> parts = List.of(line.replace("\\n", "\n").split("\\|", -1));
      return new Fault(parts.get(0), parts.subList(1, parts.size()));
    }

    /** A text that another fault has changed already is left as it is: two findings may come of one change. */
    String seededIn(String plan, boolean alone) {
      String changed = plan;
      for (int i = 0; i < texts.size(); i += 2) {
        String from = texts.get(i);
        if (alone || changed.contains(from)) {
          assertThat(changed.split(java.util.regex.Pattern.quote(from), -1)).as("once: " + from).hasSize(2);
          changed = changed.replace(from, texts.get(i + 1));
        }
      }
      return changed;
    }
  }

  private static List<Finding> facts(String name, String plan) {
    Path file = HOUSES.resolve(name);
    return new Compiler(SourceReader.FROM_DISK).compile(new Source(file.toString(), plan), file).facts();
  }

  private static Set<String> told(List<Finding> facts) {
    return facts.stream().flatMap(f -> f.each().stream())
        .flatMap(f -> List.of(f.rule(), f.rule() + f.subject().map(s -> " " + s).orElse("")).stream())
        .collect(Collectors.toSet());
  }

  @TestFactory
  Stream<DynamicTest> houses() throws Exception {
    List<DynamicTest> tests = new ArrayList<>();
    List<Path> houses;
    try (Stream<Path> files = Files.list(HOUSES)) {
      houses = files.filter(f -> f.toString().endsWith(".wattle")).sorted().toList();
    }
    assertThat(houses).hasSize(5);
    for (Path house : houses) {
      String name = house.getFileName().toString();
      String plan = Files.readString(house);
      List<Fault> faults = Files.readAllLines(HOUSES.resolve(name.replace(".wattle", ".faults"))).stream().map(Fault::of).toList();
      assertThat(faults).hasSizeGreaterThanOrEqualTo(8);
      tests.add(DynamicTest.dynamicTest(name + " as it is", () -> assertThat(facts(name, plan))
          .filteredOn(f -> f.severity() != Severity.ADVICE).extracting(Finding::headline).isEmpty()));
      for (Fault fault : faults) {
        tests.add(DynamicTest.dynamicTest(name + " with " + fault.finding, () -> {
          assertThat(told(facts(name, plan))).doesNotContain(fault.finding);
          assertThat(told(facts(name, fault.seededIn(plan, true)))).contains(fault.finding);
        }));
      }
      tests.add(DynamicTest.dynamicTest(name + " with all of them", () -> {
        String all = plan;
        for (Fault fault : faults) {
          all = fault.seededIn(all, false);
        }
        assertThat(told(facts(name, all))).containsAll(faults.stream().map(Fault::finding).toList());
      }));
    }
    return tests.stream();
  }
}
