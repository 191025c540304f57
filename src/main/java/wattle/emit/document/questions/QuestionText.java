package wattle.emit.document.questions;

import java.util.List;
import java.util.Locale;
import wattle.derivation.Derivation;
import wattle.derivation.DerivationUnits;
import wattle.emit.media.unfolded.DerivationText;
import wattle.questions.Level;
import wattle.questions.Question;
import wattle.questions.QuestionSheet;
import wattle.words.Caution;

/** Questions as text, the answer key behind a line of its own. */
public final class QuestionText {
  /** Levels of workings where they do not unfold. */
  static final int DEEPEST = 1;

  private static final double LEAST_TOLD = 1e-6;

  private QuestionText() {}

  /** @param file of the plan, for the commands that show an answer */
  public static String render(QuestionSheet sheet, String file) {
    StringBuilder text = new StringBuilder(title(sheet)).append("\n\n");
    Level level = null;
    for (int i = 0; i < sheet.questions().size(); i++) {
      Question question = sheet.questions().get(i);
      if (question.level() != level) {
        level = question.level();
        text.append(level.title().toUpperCase(Locale.ROOT)).append('\n');
      }
      text.append(String.format("%3d  ", i + 1)).append(question.text()).append('\n');
    }
    text.append("\n" + "─".repeat(60) + "\n\nANSWER KEY\n");
    DerivationUnits units = new DerivationUnits(sheet.house().units());
    for (int i = 0; i < sheet.questions().size(); i++) {
      Question question = sheet.questions().get(i);
      text.append('\n').append(String.format("%3d  ", i + 1)).append(String.join("\n     ", question.answer())).append('\n');
      for (Derivation working : telling(question)) {
        DerivationText.text(units.shown(working), DEEPEST).lines().forEach(l -> text.append("       ").append(l).append('\n'));
      }
      if (!question.events().isEmpty()) {
        text.append("     try: ").append(command(question, file)).append('\n');
      }
    }
    return text.append('\n').append(Caution.LONG).append('\n').toString();
  }

  /** Workings of figures that are not zero: those of a zero are what rounding left. */
  static List<Derivation> telling(Question question) {
    return question.workings().stream().filter(w -> Math.abs(w.si()) > LEAST_TOLD).toList();
  }

  static String title(QuestionSheet sheet) {
    return "Questions about " + sheet.house().title().orElse("this house") + ", sheet " + sheet.seed();
  }

  static String command(Question question, String file) {
    List<String> events = question.events().stream().map(e -> "--event \"" + e + "\"").toList();
    return "wattle trial " + file + " " + String.join(" ", events);
  }
}
