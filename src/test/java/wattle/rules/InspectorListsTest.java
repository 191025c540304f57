package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.read.SourceReader;
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

  private static List<String[]> lines(String file, int columns) {
    try {
      return Files.readAllLines(FOLDER.resolve(file)).stream().filter(l -> !l.isBlank() && !l.startsWith("#"))
          .map(l -> l.split(" \\| ?", columns)).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The house with changes made: {@code old => new}, several parted by {@code &&}. */
  private static String changed(String changes) {
    try {
      String house = Files.readString(FOLDER.resolve("house.wattle"));
      for (String change : changes.split(" && ", -1)) {
        String[] sides = change.split(" =>", 2);
        String old = sides[0].replace("\\n", "\n");
        assertThat(house).as("what is changed").contains(old.equals("house") ? "\"House panel\"" : old);
        house = old.equals("house")
            ? house
            : house.replace(old, (sides[1].startsWith(" ") ? sides[1].substring(1) : sides[1]).replace("\\n", "\n"));
      }
      return house;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Finding> found(String changes) {
    Path path = Path.of("house.wattle");
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", changed(changes)), path).findings();
  }

  @TestFactory
  Stream<DynamicTest> faultsAreFound() {
    List<String[]> faults = lines("faults.txt", 3);
    assertThat(faults).hasSizeGreaterThanOrEqualTo(100);
    return faults.stream().map(f -> DynamicTest.dynamicTest(f[0] + ": " + f[1], () -> {
      List<Finding> found = found(f[2]);
      assertThat(found).extracting(Finding::rule).contains(f[0]);
      assertThat(found).filteredOn(x -> x.rule().equals(f[0])).extracting(Finding::severity).doesNotContain(Severity.ADVICE);
    }));
  }

  @TestFactory
  Stream<DynamicTest> lawfulWorkIsClean() {
    List<String[]> lawful = lines("lawful.txt", 2);
    assertThat(lawful).hasSizeGreaterThanOrEqualTo(50);
    return lawful.stream().map(l -> DynamicTest.dynamicTest(l[0], () -> assertThat(found(l[1]))
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
