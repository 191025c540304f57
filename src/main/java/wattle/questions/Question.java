package wattle.questions;

import java.util.List;
import wattle.derivation.Derivation;

/**
 * A question about a house.
 *
 * @param kind what it is about; questions of one kind differ in the things that they name
 * @param text the question
 * @param answer sentences
 * @param workings how the figures of the answer are calculated; empty where the answer is read off the plan
 * @param events of the trial that shows the answer, in the words of the notation; empty where no trial does
 */
public record Question(String kind, Level level, String text, List<String> answer, List<Derivation> workings, List<String> events) {
  public Question {
    answer = List.copyOf(answer);
    workings = List.copyOf(workings);
    events = List.copyOf(events);
  }

  /** Read off the plan. */
  static Question read(String kind, Level level, String text, String... answer) {
    return new Question(kind, level, text, List.of(answer), List.of(), List.of());
  }
}
