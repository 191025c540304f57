package wattle.server;

import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.CompletionItemKind;
import wattle.conductors.Conditions;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.library.CableKind;
import wattle.model.Breaker;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/** Cables whose conductors the breaker guards: of each type that the plan may use, the thinnest that will do. */
final class CableProposals {
  /** What the ampacity tables take for granted; a run that is laid otherwise is judged when it is written. */
  private static final double USUAL_CELSIUS = 30;

  /** As branches of a house are wired most often; common practice. */
  private static final List<String> USUAL = List.of("14/2", "14/3", "12/2", "12/3", "10/3", "6/3");

  private final Analysis analysis;
  private final Proposals proposals;

  CableProposals(Analysis analysis, Proposals proposals) {
    this.analysis = analysis;
    this.proposals = proposals;
  }

  void forBranch(String branch) {
    propose(b -> b.target() instanceof Breaker.Target.ToBranch to && to.branch().equals(branch)
        || b.target() instanceof Breaker.Target.Unknown unknown && unknown.name().equals(branch));
  }

  void forPanel(String panel) {
    propose(b -> b.target() instanceof Breaker.Target.ToPanel to && to.panel().equals(panel)
        || b.target() instanceof Breaker.Target.Unknown unknown && unknown.name().equals(panel));
  }

  private void propose(java.util.function.Predicate<Breaker> feeds) {
    Optional<Breaker> breaker = analysis.house().panels().values().stream().flatMap(p -> p.breakers().stream()).filter(feeds).findFirst();
    Optional<Quantity> rating = breaker.flatMap(Breaker::rating);
    if (rating.isEmpty()) {
      types();
      return;
    }
    int poles = breaker.get().poles().size();
    List<CableKind> kinds = analysis.compilation().library().cables().values().stream().filter(k -> !k.single()).toList();
    for (CableKind kind : kinds) {
      size(kind, rating.get(), poles).ifPresent(size -> sizes(kind, size, rating.get(), poles));
    }
  }

  private Optional<WireSize> size(CableKind kind, Quantity rating, int poles) {
    Derivation air = Derivation.assumed("ambient", "T_a", Quantity.of(USUAL_CELSIUS, Units.CELSIUS));
    Derivation together = Derivation.assumed("conductors together", "n", Quantity.of(poles + 1, Units.ONE));
    WireSize any = WireSize.parse("14").orElseThrow();
    double use = Math.min(kind.ampacityCelsius(), kind.insulationCelsius());
    Conditions like = new Conditions(any, kind.metal(), kind.insulationCelsius(), use, air, together);
    return analysis
        .compilation()
        .figures()
        .conductors()
        .sizes()
        .forBreaker(Derivation.stated("rating of the breaker", "I_n", rating), like, Optional.empty(), false)
        .filter(d -> d.value() instanceof Value.Size)
        .map(d -> ((Value.Size) d.value()).size());
  }

  private void sizes(CableKind kind, WireSize size, Quantity rating, int poles) {
    if (!size.key().matches("\\d+(/0)?")) {
      return; // sizes in kcmil are laid as single conductors
    }
    String why = "smallest that a breaker of " + rating + " guards, at "
        + analysis.house().units().known(Quantity.of(USUAL_CELSIUS, Units.CELSIUS)) + " and not bundled";
    for (int count = 2; count <= poles + 1; count++) {
      proposals.add(size.key() + "/" + count + " " + kind.name(), why, CompletionItemKind.Struct);
    }
  }

  /** In the usual sizes, where no breaker says what size it must be. */
  void types() {
    for (CableKind kind : analysis.compilation().library().cables().values()) {
      if (!kind.single()) {
        USUAL.forEach(size -> proposals.add(size + " " + kind.name(), kind.label(), CompletionItemKind.Struct));
      }
    }
  }
}
