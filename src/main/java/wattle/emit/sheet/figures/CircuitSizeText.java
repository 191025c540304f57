package wattle.emit.sheet.figures;

import wattle.conductors.CircuitSize;
import wattle.derivation.Derivation;
import wattle.emit.media.unfolded.DerivationText;

/** The answer of {@code size} as text: the result first, then every figure with its workings. */
public final class CircuitSizeText {
  private CircuitSizeText() {}

  public static String of(CircuitSize.Question asked, CircuitSize size) {
    StringBuilder out = new StringBuilder();
    line(out, "breaker", size.breaker().value().text());
    line(out, "conductors", size.size() + " " + asked.metal().word() + ", " + asked.cable().name());
    size.ground().ifPresent(g -> line(out, "ground", g.value().text() + " " + asked.metal().word()));
    if (!size.raceways().isEmpty()) {
      line(out, "raceway",
          size.raceways().stream().map(r -> r.value().text()).collect(java.util.stream.Collectors.joining(" or "))
              + ", for two conductors and the ground");
    }
    line(out, "voltage drop", size.drop().value().text() + " of " + asked.volts());
    line(out, "longest run", size.longest().value().text() + " at " + asked.most());
    if (!size.byAmpacity().value().text().equals(size.size().toString())) {
      line(out, "",
          size.byAmpacity().value().text() + " is enough for the load and the breaker, up to " + size.longestByAmpacity().value().text());
    }
    out.append("\nCalculations\n");
    for (Derivation figure : size.workings()) {
      out.append(DerivationText.text(figure));
    }
    return out
        .append("\nFigured for 30 °C and one circuit by itself, unmarked terminals. The adopted local code and a licensed person decide.\n")
        .toString();
  }

  private static void line(StringBuilder out, String name, String value) {
    out.append(String.format(java.util.Locale.ROOT, "%-14s%s%n", name, value).replace("\r", ""));
  }
}
