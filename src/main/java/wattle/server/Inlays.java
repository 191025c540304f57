package wattle.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintKind;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import wattle.finding.Span;
import wattle.loads.LegLoads;
import wattle.model.Breaker;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Slot;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** What the text of a slot line does not show: the legs that its slots stand on, and the current that is connected. */
final class Inlays {
  /** Most branches whose voltages are worked out for hints: an editor asks at every key stroke, and must not wait. */
  private static final int MOST_BRANCHES = 300;

  private Inlays() {}

  static List<InlayHint> in(Question question, Range range) {
    int from = question.offset(range.getStart());
    int to = question.offset(range.getEnd());
    List<InlayHint> hints = new ArrayList<>();
    for (Tree.Item item : question.tree().items()) {
      if (item instanceof Tree.Panel tree && question.touches(tree, from, to)) {
        Panel panel = question.analysis().house().panels().get(tree.name().text());
        for (Tree.PanelStatement statement : tree.statements()) {
          if (panel != null && statement instanceof Tree.Slot slot && question.touches(slot, from, to)) {
            breaker(slot, panel).ifPresent(b -> slot(slot, b, panel, question, hints));
          }
        }
      }
      if (item instanceof Tree.Branch tree && question.touches(tree, from, to)) {
        branch(tree, question, hints);
      }
    }
    return hints;
  }

  /** How far the voltage falls at the worst outlet of a branch. */
  private static void branch(Tree.Branch tree, Question question, List<InlayHint> hints) {
    Analysis analysis = question.analysis();
    if (analysis.house().branches().size() <= MOST_BRANCHES) {
      analysis
          .derived()
          .fall(tree.name().text())
          .filter(o -> o.fall().si() > 0)
          .ifPresent(o -> hints.add(hint(question, tree.name().span().after(), "−" + o.fall().value().text())));
    }
  }

  private static Optional<Breaker> breaker(Tree.Slot slot, Panel panel) {
    List<Slot> slots = slot.slots().numbers().stream().map(n -> new Slot(n.number(), n.half(), n.misfit())).toList();
    return panel.breakers().stream()
        .filter(b -> b.id().slots().equals(slots) && b.origin().whole().equals(slot.span()))
        .findFirst();
  }

  private static void slot(Tree.Slot slot, Breaker breaker, Panel panel, Question question, List<InlayHint> hints) {
    String legs = String.join("+", breaker.poles().stream().flatMap(p -> p.leg().stream()).map(Leg::name).toList());
    if (!legs.isEmpty()) {
      hints.add(hint(question, slot.slots().span().after(), legs));
    }
    LegLoads loads = question.analysis().compilation().figures().loads().behind(question.analysis().house(), breaker);
    double most = loads.heaviestAmperes(panel.system());
    if (most > 0) {
      hints.add(hint(question, slot.span().after(), Quantity.plain(most, 3) + " A connected"));
    }
  }

  private static InlayHint hint(Question question, Span at, String label) {
    InlayHint hint = new InlayHint(question.range(at).getStart(), Either.forLeft(label));
    hint.setKind(InlayHintKind.Type);
    hint.setPaddingLeft(true);
    return hint;
  }
}
