package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.edit.Mender;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.library.StandardLibrary;
import wattle.read.SourceReader;
import wattle.syntax.Tree;

/**
 * A message that names an edit offers it as one. Those that cannot are listed in {@code src/test/resources/edits/without.txt}, each with
 * the reason; {@code -Dgolden=write} adds what is missing there, with no reason yet, and takes out what is not needed any more.
 */
class EditsOfMessagesTest {
  private static final Path LIST = Path.of("src/test/resources/edits/without.txt");
  /** How an order begins that is about the text; rules mostly order work in the house, and name the text with one of the second. */
  private static final Pattern ABOUT_TEXT = Pattern.compile(
      "^(write|add|take|leave|keep|move|place|name|state|put|change|rename|remove|make|mark|set|close|begin|give)\\b.*");
  private static final Pattern OF_RULES = Pattern.compile(".*\\b(write|mark|take out|take [a-z]+ out|add a line)\\b.*");
  private static final Compiler COMPILER = new Compiler(SourceReader.FROM_DISK);

  /** A new name is written where the fault is; where the old one is used elsewhere the editor does not offer it. */
  private static final Set<String> USED_ELSEWHERE = Set.of("unit-as-name", "unexpected");

  /** A text with faults, and where it would lie. */
  private record Faulty(String name, Source text, Path path) {
    List<Finding> findings() {
      return COMPILER.compile(text, path).findings();
    }
  }

  private static Stream<Faulty> plans() {
    return Stream.of("examples/broken", "src/test/resources/plans/findings").flatMap(f -> Golden.plans(f).stream()).map(plan -> {
      try {
        return new Faulty(plan.toString(), SourceReader.FROM_DISK.read(plan, plan.toString()), plan);
      } catch (SourceReader.Unreadable e) {
        throw new AssertionError(e);
      }
    });
  }

  private static Stream<Faulty> samples() {
    Path path = Path.of("sample.wattle");
    return StructureSample.all().values().stream()
        .map(s -> new Faulty(s.name(), new Source("sample.wattle", s.faultyPlan()), path));
  }

  private static boolean ofRule(String name) {
    return StandardLibrary.library(StandardLibrary.packNames()).rules().containsKey(name);
  }

  /** Names of findings, to an order about the text that none of their fixes makes. */
  private static Map<String, String> without() {
    Map<String, String> orders = new TreeMap<>();
    Set<String> made = new TreeSet<>();
    Stream.concat(plans(), samples()).flatMap(f -> f.findings().stream()).filter(f -> !ofRule(f.rule())).forEach(finding -> {
      if (finding.fixes().stream().anyMatch(f -> !f.edits().isEmpty())) {
        made.add(finding.rule());
      }
      finding.fixes().stream().map(Fix::order).filter(o -> ABOUT_TEXT.matcher(o).matches()).findFirst()
          .ifPresent(o -> orders.putIfAbsent(finding.rule(), o));
    });
    for (String pack : StandardLibrary.packNames()) {
      StandardLibrary.written(List.of("common", pack)).value().rules().forEach((name, text) -> {
        List<Tree.RuleFix> fixes = text.tree().fixes();
        if (fixes.stream().anyMatch(f -> !f.edits().isEmpty())) {
          made.add(name);
        }
        fixes.stream().map(f -> f.order().value()).filter(o -> OF_RULES.matcher(o).matches()).findFirst()
            .ifPresent(o -> orders.putIfAbsent(name, o));
      });
    }
    orders.keySet().removeAll(made);
    return orders;
  }

  private static Map<String, String> listed() throws IOException {
    Map<String, String> listed = new TreeMap<>();
    for (String line : Files.exists(LIST) ? Files.readAllLines(LIST) : List.<String>of()) {
      String[] parts = line.split("\\|", 2);
      listed.put(parts[0].strip(), parts[1].strip());
    }
    return listed;
  }

  @Test
  void messagesThatNameAnEditOfferItOrSayWhyNot() throws IOException {
    Map<String, String> without = without();
    Map<String, String> listed = listed();
    assertThat(without).hasSizeGreaterThan(20);
    StringBuilder lines = new StringBuilder();
    without.forEach((name, order) -> lines.append(name).append(" | ").append(listed.getOrDefault(name, "TODO " + order)).append('\n'));
    Golden.check(LIST, lines.toString());
    assertThat(listed.values()).as("reasons").noneMatch(r -> r.isEmpty() || r.startsWith("TODO"));
  }

  /** An edit that is offered takes its finding away, and makes no error where it changes the text. */
  @TestFactory
  Stream<DynamicTest> editsDoWhatTheySay() {
    return Stream.concat(plans(), samples()).map(faulty -> DynamicTest.dynamicTest(faulty.name(), () -> {
      Compilation before = COMPILER.compile(faulty.text(), faulty.path());
      List<String> wrong = new ArrayList<>();
      for (Finding finding : before.findings()) {
        for (Fix fix : finding.fixes()) {
          boolean here = fix.edits().stream().allMatch(e -> e.span().source().name().equals(faulty.text().name()));
          if (fix.edits().isEmpty() || !here || ofRule(finding.rule())) {
            continue;
          }
          Source text = new Source(faulty.text().name(), Mender.apply(faulty.text().text(), fix.edits()));
          Compilation after = COMPILER.compile(text, faulty.path());
          String what = finding.rule() + ": " + fix.order();
          if (!FixTrial.removes(finding, before, after)) {
            wrong.add(what + " leaves it");
          }
          boolean alone = fix.safety() == Fix.Safety.SAFE || USED_ELSEWHERE.contains(finding.rule());
          FixTrial.brings(fix, before, after).filter(f -> !alone)
              .ifPresent(f -> wrong.add(what + " brings " + f.rule() + ", " + f.headline()));
        }
      }
      assertThat(wrong).isEmpty();
    }));
  }
}
