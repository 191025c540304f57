package wattle.live;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The live page of a plan in feet tells lengths in feet, down to the steps of an opened figure; that of one in meters does not. */
class PlanInFeetLiveTest {
  /** Every figure of the page, opened, and every step that they link to. */
  private static String opened(LiveServer server, String... events) {
    JsonNode look = server.look(events);
    String body = "{\"look\":" + look.path("look").asLong() + ",\"";
    String markup = look.path("parts").toString();
    int figures = markup.split("data-figure").length - 1;
    assertThat(figures).isGreaterThan(6);
    StringBuilder told = new StringBuilder(markup);
    for (int f = 0; f < figures; f++) {
      told.append(server.post("unfold", body + "figure\":" + f + "}").body());
    }
    Set<String> asked = new HashSet<>();
    for (List<String> linked = links(told, asked); !linked.isEmpty(); linked = links(told, asked)) {
      linked.forEach(step -> told.append(server.post("unfold", body + "step\":" + step + "}").body()));
    }
    return told.toString();
  }

  private static List<String> links(StringBuilder told, Set<String> asked) {
    return Pattern.compile("#s(\\d+)").matcher(told.toString()).results().map(m -> m.group(1)).filter(asked::add).toList();
  }

  @Test
  void lengthsAndTemperaturesAreThoseOfThePlan() {
    try (LiveServer server = new LiveServer(Path.of("src/test/resources/units/quarry-rise.wattle"))) {
      String told = opened(server, "shed.o2 draws 10 A", "attic.heater on");
      // 1.93 Ω/kft is the figure of NFPA 70 Chapter 9 Table 8; 75 °C are 167 °F.
      assertThat(told).contains("1.93 Ω/kft × 8 ft", "length = 8 ft", "75 °C = 167 °F", "75 °C (167 °F)")
          .doesNotContainPattern("[0-9] m\\b").doesNotContain("Ω/km");
      assertThat(server.complaints).isEmpty();
    }
    try (LiveServer server = new LiveServer(Path.of("examples/kitchen-renovation/after.wattle"))) {
      assertThat(opened(server, "kitchen.lamp on", "utility.heater on")).contains("length = 3 m").doesNotContain(" ft")
          .doesNotContain("°F");
    }
  }
}
