package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** NFPA 70 404.14(A): a switch against its load of 2,000 W / 120 V = 16.7 A, on each supply; a rating that nobody stated is no fault. */
class SwitchRatingTest {
  private static Compilation compile(String system, String rating) {
    String plan = """
        use code us-2023
        service main SYSTEM 100 A { source available 10 kA  run 5 m of 3 Cu triplex }
        panel P from main { bus 125 A   slots 12   bonded   main breaker 100 A 10 kA
          1  20 A  lights  "Lights" }
        branch lights by 12/2 NM-B { P --5 m-- shop.sw --3 m-- shop.lamp }
        room shop { sw: switch RATING for lamp   lamp: light 2000 W }
        """.replace("SYSTEM", system).replace("RATING", rating);
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("plan", plan), Path.of("plan.wattle"));
  }

  private static boolean overloaded(Compilation plan) {
    return plan.findings().stream().anyMatch(f -> f.rule().equals("switch-overloaded"));
  }

  private static boolean asksForTheRating(Compilation plan) {
    return plan.coverage().unstated().stream().anyMatch(u -> u.fact().equals("stated-rating") && u.places().contains("shop.sw"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"120/240 V", "120/208 V", "120/208 V three-phase"})
  void onlyAStatedRatingIsExceeded(String system) {
    assertThat(overloaded(compile(system, "15 A"))).isTrue();
    assertThat(overloaded(compile(system, "20 A"))).isFalse();
    Compilation unstated = compile(system, "");
    assertThat(overloaded(unstated)).isFalse();
    assertThat(asksForTheRating(unstated)).as("not checked, and said").isTrue();
    assertThat(asksForTheRating(compile(system, "20 A"))).isFalse();
  }
}
