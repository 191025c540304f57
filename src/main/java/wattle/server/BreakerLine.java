package wattle.server;

import java.util.List;
import java.util.Locale;
import wattle.model.Breaker;
import wattle.model.Pole;

/** A breaker in one line: {@code P/2+4, 20 A, common trip, ground fault, on legs A and B}. */
final class BreakerLine {
  private BreakerLine() {}

  static String of(Breaker breaker) {
    StringBuilder line = new StringBuilder(breaker.id().toString());
    breaker.rating().ifPresent(r -> line.append(", ").append(r));
    if (breaker.poles().size() > 1) {
      line.append(", ").append(breaker.handle() == Breaker.Handle.COMMON_TRIP ? "common trip" : "handles tied");
    }
    breaker.protections().stream()
        .map(p -> p.name().toLowerCase(Locale.ROOT).replace('_', ' '))
        .sorted()
        .forEach(p -> line.append(", ").append(p));
    List<String> legs = breaker.poles().stream().map(Pole::leg).flatMap(l -> l.stream()).map(Enum::name).distinct().toList();
    if (!legs.isEmpty()) {
      line.append(legs.size() == 1 ? ", on leg " : ", on legs ").append(String.join(" and ", legs));
    }
    return line.toString();
  }
}
