package wattle.questions;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * One kind of question about a house.
 *
 * @param candidates so many of its kind as the house has things to ask about; each is made when it is drawn, and is absent where the
 *     figures that it needs are not known
 */
record QuestionKind(Level level, List<Supplier<Optional<Question>>> candidates) {
  QuestionKind {
    candidates = List.copyOf(candidates);
  }
}
