package wattle.questions;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import wattle.model.Breaker;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Pole;
import wattle.model.SupplySystem;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.Worksheet;

/** Legs, volts between poles, bonds and the load of the service. */
final class PanelQuestions {
  private static final int MOST_NAMED = 4;

  private final Asked asked;

  PanelQuestions(Asked asked) {
    this.asked = asked;
  }

  List<QuestionKind> kinds() {
    return List.of(
        new QuestionKind(Level.EASY, legs()), new QuestionKind(Level.EASY, poles()), new QuestionKind(Level.MEDIUM, bonds()),
        new QuestionKind(Level.HARD, loads()));
  }

  private List<Breaker> breakers(boolean several) {
    return asked.house().panels().values().stream().filter(p -> p.legs().size() > 1).flatMap(p -> p.breakers().stream())
        .filter(b -> b.poles().size() > 1 == several && b.poles().stream().allMatch(p -> p.leg().isPresent()))
        .filter(b -> b.target() instanceof Breaker.Target.ToBranch || b.target() instanceof Breaker.Target.ToPanel).toList();
  }

  private List<Supplier<Optional<Question>>> legs() {
    return breakers(false).stream().<Supplier<Optional<Question>>>map(b -> () -> Optional.of(leg(b))).toList();
  }

  private Question leg(Breaker breaker) {
    Panel panel = asked.house().panels().get(breaker.id().panel());
    Pole pole = breaker.poles().get(0);
    String why = breaker.legsStated()
        ? "The plan states it for this slot."
        : "In this panel " + (panel.order() == wattle.model.SlotOrder.ONE_COLUMN ? "slots" : "rows of slots") + " take the legs in turn: "
            + panel.legs().stream().map(Leg::name).collect(Collectors.joining(", ")) + ", and again.";
    return Question.read("leg", Level.EASY, "Which leg is " + asked.breaker(breaker) + " on?", "Leg " + pole.leg().orElseThrow() + ".",
        why);
  }

  private List<Supplier<Optional<Question>>> poles() {
    return breakers(true).stream().<Supplier<Optional<Question>>>map(b -> () -> Optional.of(poles(b))).toList();
  }

  private Question poles(Breaker breaker) {
    SupplySystem system = asked.house().panels().get(breaker.id().panel()).system();
    List<Leg> legs = breaker.poles().stream().map(p -> p.leg().orElseThrow()).toList();
    boolean oneLeg = legs.stream().distinct().count() == 1;
    boolean everyLegOnce = legs.stream().distinct().count() == legs.size();
    String between = oneLeg
        ? "0 V between them: both are on leg " + legs.get(0) + "."
        : Asked.plain(system.legToLegVolts()) + " V between " + (everyLegOnce ? "any two of them" : "those on different legs")
            + ": they are on legs "
            + legs.stream().map(Leg::name).collect(Collectors.joining(" and ")) + ".";
    return Question.read("poles", Level.EASY,
        "What is the nominal voltage between the poles of " + asked.breaker(breaker) + ", and from each pole to the neutral?", between,
        Asked.plain(system.legToNeutralVolts()) + " V from each pole to the neutral.");
  }

  private List<Supplier<Optional<Question>>> bonds() {
    List<Panel> bonded = asked.house().panels().values().stream().filter(Panel::bonded).toList();
    return bonded.isEmpty() || asked.house().services().isEmpty() ? List.of() : List.of(() -> Optional.of(bonds(bonded)));
  }

  private Question bonds(List<Panel> bonded) {
    List<String> answer = new ArrayList<>();
    answer.add("In " + bonded.stream().map(p -> asked.panel(p.name())).collect(Collectors.joining(" and ")) + ".");
    List<Panel> isolated = asked.house().panels().values().stream().filter(p -> !p.bonded()).toList();
    if (!isolated.isEmpty()) {
      answer.add("In " + (isolated.size() > MOST_NAMED
          ? "the other " + isolated.size() + " panels"
          : isolated.stream().map(p -> asked.panel(p.name())).collect(Collectors.joining(", "))) + " the neutral is isolated from ground.");
    }
    answer.add("The bond gives fault current a low-impedance path back to the source, so that the breaker trips or the fuse opens.");
    answer.add("A second bond downstream would put neutral current on grounds and on metal that people touch.");
    return Question.read("bond", Level.MEDIUM, "Where are neutral and ground bonded in this house, and why only there?",
        answer.toArray(String[]::new));
  }

  private List<Supplier<Optional<Question>>> loads() {
    return asked.plan().figures().worksheets().services().stream().<Supplier<Optional<Question>>>map(read -> () -> load(read)).toList();
  }

  private Optional<Question> load(HouseInputs.Read read) {
    Optional<Worksheet> least = asked.plan().figures().worksheets().least(read);
    return least.map(w -> new Question("load", Level.HARD,
        "What is the calculated load of service " + w.name() + " by the method “" + w.method().title() + "”"
            + (w.rating().isPresent() ? ", and what does its rating leave?" : "?"),
        answer(w), List.of(w.sized()), List.of()));
  }

  private static List<String> answer(Worksheet worksheet) {
    List<String> answer = new ArrayList<>();
    answer.add(Asked.shown(worksheet.total()) + ", which is " + Asked.shown(worksheet.sized()) + " (" + worksheet.method().source() + ").");
    worksheet.spare().ifPresent(s -> answer.add(
        s.si() >= 0
            ? "Its rating of " + worksheet.rating().map(Asked::shown).orElse("") + " leaves " + Asked.shown(s) + "."
            : "That is more than its rating of " + worksheet.rating().map(Asked::shown).orElse("") + "."));
    return answer;
  }
}
