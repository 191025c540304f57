package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** A message rounds as the trade does, and never so far that what breaks a limit looks like the limit. */
class RoundedFiguresTest {
  private static List<String> drops(String length, String limit) {
    String text = """
        use code us-2023
        LIMIT
        service main 120/240 V 100 A { source available 10 kA  earth rods by 6 Cu }
        panel P from main { bus 100 A slots 4 bonded
          1 15 A arc-fault a
        }
        branch a by 14/2 NM-B { P --LENGTH-- den.o }
        room den { o: receptacle tamper-resistant }
        """.replace("LENGTH", length).replace("LIMIT", limit);
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("den.wattle", text), Path.of("den.wattle")).findings().stream()
        .filter(f -> f.rule().equals("voltage-drop-branch")).map(Finding::headline).toList();
  }

  /**
   * 12 A (80 % of the breaker), out and back at 3.07 ohm for 1000 ft of 14 AWG copper (NFPA 70-2023 chapter 9, table 8): 3 % of 120 V at
   * 14.9 m.
   */
  @Test
  void whatIsBeyondALimitDoesNotLookLikeIt() {
    assertThat(drops("14.85 m", "")).isEmpty();
    assertThat(drops("16 m", "")).containsExactly("voltage drop of circuit 'a' is 3.2 %");
    assertThat(drops("15 m", "")).containsExactly("voltage drop of circuit 'a' is 3.02 %");
    assertThat(drops("17.4 m", "limit branch-drop 3.5 %")).containsExactly("voltage drop of circuit 'a' is 3.51 %");
  }
}
