package wattle.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import wattle.read.SourceReader;

/**
 * Plans as large as are read, in a process of bounded memory: findings or a result, and never a trace or a word of memory. The usual run
 * has an eighth of the size in a share of the memory, of a few; {@code -Dplan.mib=8} takes all of them at the bound in 1 GiB.
 */
class PlanBoundsTest {
  private static final int MIB = Integer.getInteger("plan.mib", 1);
  private static final List<LargePlans> OF_THE_USUAL_RUN = List.of(
      LargePlans.WRONG_LINES, LargePlans.WORDS, LargePlans.CLOSING_BRACES, LargePlans.PANELS_IN_A_ROW, LargePlans.SWITCHES_OF_ONE_LAMP);

  @TempDir
  Path folder;

  @ParameterizedTest
  @EnumSource
  void aLargePlanIsJudgedInBoundedMemory(LargePlans kind) throws Exception {
    if (MIB == 1 && !OF_THE_USUAL_RUN.contains(kind)) {
      return;
    }
    Files.writeString(folder.resolve("plan.wattle"), kind.ofSize(MIB << 20));
    BoundedProcess.Outcome outcome = BoundedProcess.run(folder, "-Xmx" + (64 + 120 * MIB) + "m", List.of("check", "plan.wattle"));
    assertThat(outcome.text()).doesNotContain("Exception", "internal error", "out of memory", "\tat java").contains("plan.wattle");
    assertThat(outcome.code()).isEqualTo(1);
  }

  @Test
  void aStepAboveIsRefused() throws Exception {
    Files.writeString(folder.resolve("plan.wattle"), "room a { }\n" + " ".repeat((int) SourceReader.USUAL_MOST_BYTES));
    BoundedProcess.Outcome outcome = BoundedProcess.run(folder, "-Xmx128m", List.of("check", "plan.wattle"));
    assertThat(outcome.text()).contains("MiB is over the limit of 8 MiB; raise it with --largest-file").hasLineCount(1);
    assertThat(outcome.code()).isEqualTo(2);
  }

  /** Files that are each within the bound are not, together, a way past it. */
  @Test
  void allFilesOfAPlanTogetherHaveTheBound() throws Exception {
    StringBuilder plan = new StringBuilder("plan \"P\"\n");
    for (int i = 0; i < 9; i++) {
      plan.append("use \"part").append(i).append(".wattle\"\n");
      Files.writeString(folder.resolve("part" + i + ".wattle"), "room r" + i + " { }\n" + " ".repeat(1 << 20));
    }
    Files.writeString(folder.resolve("plan.wattle"), plan.toString());
    BoundedProcess.Outcome outcome = BoundedProcess.run(folder, "-Xmx128m", List.of("check", "plan.wattle"));
    assertThat(outcome.text()).contains("a plan and its files have more than 8 MiB", "--largest-file allows more", "plan.wattle:9:5");
    assertThat(outcome.code()).isEqualTo(1);
    assertThat(BoundedProcess.run(folder, "-Xmx160m", List.of("check", "--largest-file", "10", "plan.wattle")).text())
        .doesNotContain("have more than");
  }

  /** A plan and 999 files that it uses are read; of one more it is said that reading stopped. */
  @Test
  void aThousandFilesAreReadAndNotOneMore() throws Exception {
    StringBuilder plan = new StringBuilder("plan \"P\"\n");
    for (int i = 0; i < 1000; i++) {
      Files.writeString(folder.resolve("f" + i + ".wattle"), "room r" + i + " { l: light 10 W }\n");
      if (i < 999) {
        plan.append("use \"f").append(i).append(".wattle\"\n");
      }
    }
    Files.writeString(folder.resolve("plan.wattle"), plan);
    List<String> check = List.of("check", "plan.wattle");
    assertThat(BoundedProcess.run(folder, "-Xmx160m", check).text()).doesNotContain("1000 files", "out of memory", "\tat java");
    Files.writeString(folder.resolve("plan.wattle"), plan + "use \"f999.wattle\"\n");
    assertThat(BoundedProcess.run(folder, "-Xmx160m", check).text()).contains("a plan uses more than 1000 files", "plan.wattle:1001:5")
        .doesNotContain("out of memory", "\tat java");
  }

  /** 118 million pixels of the 120 million that a picture may have, and 160 million. */
  @Test
  @EnabledIfSystemProperty(named = "plan.mib", matches = "8", disabledReason = "it takes most of 1 GiB")
  void thePictureOfMostPixelsIsDrawnIn1GiB() throws Exception {
    String farm = Path.of("examples", "hollin-farm", "house.wattle").toAbsolutePath().toString();
    List<String> draw = List.of("draw", "--view", "one-line", "--out", "farm.png", "--resolution");
    assertThat(BoundedProcess.run(folder, "-Xmx1g", Stream.concat(draw.stream(), Stream.of("770", farm)).toList()).code()).isLessThan(2);
    BoundedProcess.Outcome beyond = BoundedProcess.run(folder, "-Xmx1g", Stream.concat(draw.stream(), Stream.of("900", farm)).toList());
    assertThat(beyond.text()).contains("pixels at 900 pixels per inch; use fewer");
    assertThat(beyond.code()).isEqualTo(2);
  }
}
