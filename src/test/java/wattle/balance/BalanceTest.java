package wattle.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import wattle.balance.SmallPanels.Small;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.edit.Renumbering;
import wattle.finding.Source;
import wattle.loads.ConnectedLoads;
import wattle.read.SourceReader;

/** The search against every arrangement tried one by one, and the text that comes of it. */
class BalanceTest {
  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("panel.wattle", text), Path.of("panel.wattle"));
  }

  private static PanelBalance balance(Compilation plan, int moves) {
    return Balance.of(plan.house(), ConnectedLoads.of(plan.house()), List.of("P"), moves, Balance.USUAL_MOST_STEPS).get(0);
  }

  private static double amperes(PanelBalance balance) {
    return balance.after().difference(balance.panel().system()) / 120;
  }

  private static Map<String, String> renumbered(PanelBalance balance) {
    Map<String, String> slots = new HashMap<>();
    for (Move move : balance.moves()) {
      for (int b = 0; b < move.breakers().size(); b++) {
        for (int pole = 0; pole < move.to().get(b).size(); pole++) {
          slots.put(move.breakers().get(b).poles().get(pole).slot().toString(), move.to().get(b).get(pole).toString());
        }
      }
    }
    return slots;
  }

  @Provide
  Arbitrary<Small> panels() {
    return SmallPanels.any();
  }

  @Property(tries = 120, edgeCases = EdgeCasesMode.NONE)
  void noArrangementIsBetterAndNoneAsGoodTakesFewerMoves(@ForAll("panels") Small panel, @ForAll @IntRange(max = 9) int moves) {
    Compilation plan = compile(panel.text());
    assertThat(wattle.Structure.findings(plan)).as(panel.text()).isEmpty();
    PanelBalance balance = balance(plan, moves);
    BruteForce all = new BruteForce(panel);
    assertThat(amperes(balance)).as(panel.text()).isCloseTo(all.leastWith(moves), within(1e-6));
    assertThat(balance.moves()).hasSize(all.fewestFor(all.leastWith(moves)));
    assertThat(balance.proof().complete()).isTrue();
    assertThat(balance.proof().bound()).isLessThanOrEqualTo(amperes(balance) * 120 + 1e-6);
    assertThat(balance.after().difference(balance.panel().system()))
        .isLessThanOrEqualTo(balance.before().difference(balance.panel().system()));
  }

  @Property(tries = 40, edgeCases = EdgeCasesMode.NONE)
  void theTextWithNewSlotsHasTheLoadsThatWerePromised(@ForAll("panels") Small panel) {
    Compilation plan = compile(panel.text());
    PanelBalance balance = balance(plan, Integer.MAX_VALUE);
    Map<Source, String> changed = new Renumbering(Map.of("P", renumbered(balance))).apply(plan.items()).texts();
    assertThat(changed.isEmpty()).isEqualTo(balance.moves().isEmpty());
    if (!changed.isEmpty()) {
      Compilation after = compile(changed.values().iterator().next());
      assertThat(wattle.Structure.findings(after)).isEmpty();
      assertThat(ConnectedLoads.of(after.house()).panel("P").difference(balance.panel().system()))
          .isCloseTo(balance.after().difference(balance.panel().system()), within(1e-6));
    }
  }

  @Property(tries = 40, edgeCases = EdgeCasesMode.NONE)
  void aSearchThatStopsEarlySaysNoMoreThanItKnows(@ForAll("panels") Small panel, @ForAll @IntRange(min = 1, max = 30) int steps) {
    Compilation plan = compile(panel.text());
    ConnectedLoads loads = ConnectedLoads.of(plan.house());
    PanelBalance balance = Balance.of(plan.house(), loads, List.of("P"), 99, steps).get(0);
    double best = new BruteForce(panel).leastWith(99) * 120.0;
    assertThat(balance.proof().bound()).isLessThanOrEqualTo(best + 1e-6);
    assertThat(balance.after().difference(balance.panel().system())).isGreaterThanOrEqualTo(best - 1e-6);
    assertThat(amperes(balance) * 120).isLessThanOrEqualTo(balance.before().difference(balance.panel().system()) + 1e-6);
  }
}
