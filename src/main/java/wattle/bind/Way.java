package wattle.bind;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Protection;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/**
 * A slot line as it is written, before the legs of its panel and the thing it feeds are known.
 *
 * @param target the word that names what it feeds; absent where none does
 */
record Way(
    BreakerId id,
    Tree.Slot tree,
    Breaker.Device device,
    Breaker.Handle handle,
    Optional<Quantity> rating,
    Optional<Quantity> interrupting,
    Optional<Quantity> residual,
    Set<Protection> protections,
    Optional<Tree.Word> target,
    Set<String> traits) {
  List<Tree.Word> legs() {
    return tree.legs();
  }
}
