package wattle.emit.view.trialpicture;

import java.util.ArrayList;
import java.util.List;
import wattle.derivation.Derivation;
import wattle.quantity.Quantity;
import wattle.trials.ProtectionReading;
import wattle.trials.ProtectionReading.Verdict;
import wattle.trials.SourceReading;
import wattle.trials.TrialResult;

/** Lines of a box about what feeds the house from there, and about protection that stands there. */
final class FeedAndTrip {
  private FeedAndTrip() {}

  /** Of a source of the house. */
  static List<BoxFigures.Line> source(TrialResult result, String device) {
    List<BoxFigures.Line> lines = new ArrayList<>();
    for (SourceReading s : result.sources()) {
      if (s.name().equals(device)) {
        lines.add(new BoxFigures.Line(s.state().words(), true, Sign.SOURCE));
        if (s.state() != SourceReading.State.STOPPED) {
          boolean takes = s.watts().si() < 0;
          lines.add(new BoxFigures.Line((takes ? "takes " : "gives ") + Quantity.plain(Math.abs(s.watts().si()), 4) + " W, "
              + Quantity.plain(s.amps().si(), 3) + " A", false, Sign.NONE));
        }
      }
    }
    return lines;
  }

  /** Of a breaker, such as {@code breaker P/2}, or a device that protects. */
  static List<BoxFigures.Line> protection(TrialResult result, String name) {
    List<BoxFigures.Line> lines = new ArrayList<>();
    for (ProtectionReading p : result.protections()) {
      if (p.name().equals(name)) {
        boolean alarm = p.verdict() != Verdict.HOLDS && p.verdict() != Verdict.UNKNOWN;
        lines.add(new BoxFigures.Line(p.kind() + ": " + p.verdict().words(), alarm, alarm ? Sign.DANGER : Sign.NONE));
        p.residual().ifPresent(r -> lines.add(new BoxFigures.Line(
            "residual " + milliamperes(r) + p.touched().map(t -> ", touched " + milliamperes(t)).orElse(""), false, Sign.NONE)));
        p.within().ifPresent(t -> lines.add(new BoxFigures.Line("within " + Quantity.plain(t.si(), 2) + " s at most", false, Sign.NONE)));
      }
    }
    return lines;
  }

  private static String milliamperes(Derivation amps) {
    return Quantity.plain(amps.si() * 1000, 3) + " mA";
  }
}
