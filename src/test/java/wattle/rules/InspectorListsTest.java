package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.read.SourceReader;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.library.StandardLibrary;

/**
 * A lawful house, changed in one thing at a time: faults that an inspector writes up, each with the rule that must find it, and
 * arrangements that an article allows, which must raise nothing. The article stands in each line of the lists.
 */
class InspectorListsTest {
  private static final Path FOLDER = Path.of("src/test/resources/plans/inspector");

  /** Ends of the names of the lists, each with the plan that they change. */
  private static final Map<String, Path> PLANS = new java.util.TreeMap<>(
      Map.of(
          "", FOLDER.resolve("house.wattle"),
          "-lists", FOLDER.resolve("house.wattle"),
          "-articles", FOLDER.resolve("house.wattle"),
          "-shop", FOLDER.resolve("shop.wattle"),
          "-block", Path.of("examples/mill-quay/house.wattle"),
          "-flat", Path.of("examples/apartment/house.wattle"),
          "-renovation", Path.of("examples/kitchen-renovation/after.wattle")));

  /** One line of a list, with the plan that it changes. */
  private record Line(Path plan, String[] parts) {}

  private static List<Line> lines(String kind, int columns) {
    List<Line> lines = new ArrayList<>();
    PLANS.forEach((end, plan) -> {
      try {
        Files.readAllLines(FOLDER.resolve(kind + end + ".txt")).stream().filter(l -> !l.isBlank() && !l.startsWith("#"))
            .forEach(l -> lines.add(new Line(plan, l.split(" \\| ?", columns))));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    });
    return lines;
  }

  /** The plan with changes made: {@code old => new}, several parted by {@code &&}. */
  private static String changed(Path plan, String changes) {
    try {
      String house = Files.readString(plan);
      for (String change : changes.split(" && ", -1)) {
        String[] sides = change.split(" =>", 2);
        String old = sides[0].replace("\\n", "\n");
        if (!old.equals("house")) {
          assertThat(house).as("what is changed").contains(old);
          house = house.replace(old, (sides[1].startsWith(" ") ? sides[1].substring(1) : sides[1]).replace("\\n", "\n"));
        }
      }
      return house;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Compilation compiled(String text, Path plan) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source(plan.toString(), text), plan);
  }

  private static List<Finding> found(String text, Path plan) {
    return compiled(text, plan).findings();
  }

  @TestFactory
  Stream<DynamicTest> faultsAreFound() {
    List<Line> faults = lines("faults", 3);
    assertThat(faults).hasSizeGreaterThanOrEqualTo(250);
    return faults.stream().map(f -> DynamicTest.dynamicTest(f.parts[0] + ": " + f.parts[1], () -> {
      List<Finding> found = found(changed(f.plan, f.parts[2]), f.plan);
      assertThat(found).extracting(Finding::rule).contains(f.parts[0]);
      assertThat(found).filteredOn(x -> x.rule().equals(f.parts[0])).extracting(Finding::severity).doesNotContain(Severity.ADVICE);
    }));
  }

  /**
   * A mistake elsewhere, here a word that nobody knows on a box of its own, hides none of them: it is found, or the plan says that it
   * was not decided, as where the box could be the alarm or the source that the rule asks for.
   */
  @TestFactory
  Stream<DynamicTest> faultsAreFoundBesideAMistakeElsewhere() {
    return lines("faults", 3).stream().map(f -> DynamicTest.dynamicTest(f.parts[0] + ": " + f.parts[1], () -> {
      List<Finding> sure = found(changed(f.plan, f.parts[2]), f.plan).stream().filter(x -> x.rule().equals(f.parts[0])).toList();
      Compilation compilation = compiled(
          changed(f.plan, f.parts[2]) + "\nroom lumber \"Lumber room\" is storage existing { x: junction covred }\n", f.plan);
      assertThat(compilation.findings()).extracting(Finding::rule).contains("word-unknown");
      List<String> rules = compilation.findings().stream().map(Finding::rule).toList();
      assertThat(sure).isNotEmpty().allSatisfy(
          x -> assertThat(rules.contains(x.rule()) || UNDECIDED.contains(x.rule()) && compilation.undecided().has(x)).isTrue());
    }));
  }

  /** Rules of the whole house that ask for something which the box with the mistake could be. */
  private static final Set<String> UNDECIDED = Set.of("source-overloads-bus", "source-not-at-end", "carbon-monoxide-alarm-missing",
      "smoke-alarm-missing-outside-bedrooms");

  @TestFactory
  Stream<DynamicTest> lawfulWorkIsClean() {
    List<Line> lawful = lines("lawful", 2);
    assertThat(lawful).hasSizeGreaterThanOrEqualTo(140);
    return lawful.stream().map(l -> DynamicTest.dynamicTest(l.parts[0], () -> assertThat(found(changed(l.plan, l.parts[1]), l.plan))
        .filteredOn(f -> f.severity() != Severity.ADVICE).extracting(f -> f.rule() + ": " + f.headline()).isEmpty()));
  }

  /** Every rule of the American pack has the exceptions of its article, or says why there is none. */
  @Test
  void rulesSayWhatTheirArticleExcepts() {
    List<String> silent = new ArrayList<>();
    RuleLoader.load(StandardLibrary.written(List.of("common", "us-2023")).value()).value().stream()
        .filter(r -> r.pack().equals("us-2023") && r.exceptions().isEmpty()).map(Rule::name).forEach(silent::add);
    assertThat(silent).as("rules without an exception or the reason why there is none").isEmpty();
  }
}
