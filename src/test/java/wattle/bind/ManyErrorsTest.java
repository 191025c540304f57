package wattle.bind;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** What mistakes put in doubt is found thing by thing; where there are too many of both, the whole plan is in doubt. */
class ManyErrorsTest {
  private static Compilation compile(int mistakes) {
    String plan = """
        use code us-2023
        service main 120/240 V 100 A { source available 10 kA }
        panel P from main { bus 100 A   slots 4   bonded
          1  30 A  hall }
        branch hall by 14/2 NM-B { P --4 m-- hall.lamp }
        room hall { lamp: light 10 W }
        """
        + IntStream.range(0, mistakes).mapToObj(i -> "room r" + i + " { lamp: lihgt 10 W }\n").collect(Collectors.joining());
    return new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("many.wattle", plan), Path.of("many.wattle"));
  }

  @Test
  void fewErrorsLeaveTheRestJudged() {
    Compilation plan = compile(20);
    assertThat(plan.findings()).anyMatch(f -> f.rule().equals("kind-unknown"));
    assertThat(plan.findings()).anyMatch(f -> f.rule().equals("breaker-above-conductor"));
  }

  /** What rests on all branches, panels or rooms is no longer judged; a fault of one thing by itself still is. */
  @Test
  void ofTooManyEverythingIsInDoubt() {
    Compilation plan = compile(6000);
    assertThat(plan.findings()).anyMatch(f -> f.rule().equals("breaker-above-conductor"));
    assertThat(plan.coverage().inDoubt()).isGreaterThan(compile(20).coverage().inDoubt());
  }

  /** They are counted with what stands in a panel as well: mistakes times slot lines is what takes time. */
  @Test
  void ofTooManyInOnePanelEverythingIsInDoubt() {
    String lines = IntStream.rangeClosed(1, 6000).mapToObj(n -> "  " + 2 * n + "  30 A  c" + n + "\n").collect(Collectors.joining());
    String plan = """
        service main 120/240 V 100 A { source available 10 kA }
        panel P from main { bus 100 A   slots 400   bonded
        %s}
        """;
    Compilation many = new Compiler(new SourceReader(Map.of(), 1 << 20))
        .compile(new Source("many.wattle", plan.formatted(lines)), Path.of("many.wattle"));
    assertThat(many.findings()).extracting(f -> f.rule()).contains("breaker-without-branch", "slot-out-of-range");
    assertThat(many.coverage().inDoubt()).isGreaterThan(6000);
  }
}
