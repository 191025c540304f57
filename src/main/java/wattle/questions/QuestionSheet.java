package wattle.questions;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import wattle.compiler.Compilation;
import wattle.model.House;

/**
 * Questions about one house, easy ones first.
 *
 * @param seed another one draws other things of the house
 */
public record QuestionSheet(House house, long seed, List<Question> questions) {
  /** Questions of one kind that are asked at most. */
  private static final int MOST_ALIKE = 2;

  public QuestionSheet {
    questions = List.copyOf(questions);
  }

  /**
   * Draws questions. Of each kind one is drawn before a second is, so that a sheet is as varied as the house is.
   *
   * @param most how many questions, if the house has things enough to ask about
   */
  public static QuestionSheet of(Compilation plan, long seed, int most) {
    Asked asked = new Asked(plan);
    List<QuestionKind> kinds = new ArrayList<>(new PanelQuestions(asked).kinds());
    kinds.addAll(new CircuitQuestions(asked).kinds());
    kinds.addAll(new NeutralQuestions(asked).kinds());
    kinds.addAll(new FaultQuestions(asked).kinds());
    Random random = new Random(seed);
    List<List<Supplier<Optional<Question>>>> drawn = new ArrayList<>();
    for (QuestionKind kind : kinds) {
      List<Supplier<Optional<Question>>> candidates = new ArrayList<>(kind.candidates());
      Collections.shuffle(candidates, random);
      drawn.add(candidates);
    }
    Collections.shuffle(drawn, random);
    List<Question> questions = new ArrayList<>();
    for (int round = 0; round < MOST_ALIKE; round++) {
      for (List<Supplier<Optional<Question>>> candidates : drawn) {
        if (questions.size() < most) {
          next(candidates).ifPresent(questions::add);
        }
      }
    }
    List<Question> ordered = new ArrayList<>();
    for (Level level : Level.values()) {
      questions.stream().filter(q -> q.level() == level).forEach(ordered::add);
    }
    return new QuestionSheet(plan.house(), seed, ordered);
  }

  /** The first of the candidates whose figures are known; it and those before it are taken away. */
  private static Optional<Question> next(List<Supplier<Optional<Question>>> candidates) {
    while (!candidates.isEmpty()) {
      Optional<Question> question = candidates.remove(candidates.size() - 1).get();
      if (question.isPresent()) {
        return question;
      }
    }
    return Optional.empty();
  }
}
