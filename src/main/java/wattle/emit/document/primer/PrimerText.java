package wattle.emit.document.primer;

import java.util.ArrayList;
import java.util.List;
import wattle.compiler.Compilation;
import wattle.compiler.Primer;
import wattle.derivation.Derivation;
import wattle.model.Event;
import wattle.model.Trial;
import wattle.trials.Expectations;
import wattle.trials.Judged;
import wattle.words.Caution;

/** A term of the primer as text. */
public final class PrimerText {
  private PrimerText() {}

  /** What the term means, what happens in its trial, and the figures that come out. */
  public static String render(Primer primer, Compilation lessons) {
    StringBuilder text = new StringBuilder(primer.title()).append("\n\n").append(primer.text()).append("\n\n");
    text.append("On the mock-up wall: ").append(events(primer, lessons)).append('\n');
    figures(primer, lessons).forEach(f -> text.append("  ").append(f).append('\n'));
    text.append("\nTry it: ").append(command(primer)).append('\n');
    return text.append('\n').append(Caution.LONG).append('\n').toString();
  }

  static String events(Primer primer, Compilation lessons) {
    Trial trial = lessons.house().trials().get(primer.trial());
    return String.join("; ", trial.events().stream().map(Event::span).map(s -> s.text().strip().replaceAll("\\s+", " ")).toList()) + ".";
  }

  /** What the lessons expect of the trial, with the figures that the engine found. */
  static List<String> figures(Primer primer, Compilation lessons) {
    List<String> figures = new ArrayList<>();
    for (Judged judged : Expectations.judged(lessons.house(), lessons.figures().trials())) {
      if (judged.expectation().trial().filter(primer.trial()::equals).isPresent() && judged.found().isPresent()) {
        Derivation found = judged.found().get();
        String line = judged.expectation().measure().replace('-', ' ') + judged.expectation().subject().map(s -> " at " + s).orElse("")
            + ": "
            + (Math.abs(found.si()) < 1e-6 ? "0 " + found.quantity().map(q -> q.unit().symbol()).orElse("") : found.value().text());
        if (!figures.contains(line)) {
          figures.add(line);
        }
      }
    }
    return figures;
  }

  static String command(Primer primer) {
    return "wattle trial " + Primer.LESSONS + " " + primer.trial();
  }
}
