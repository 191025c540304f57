package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** {@code trial --add}: can this be added? */
class TrialAddTest {
  private static final String HOUSE = "examples/alder-court/house.wattle";

  private record Said(int code, String out, String err) {}

  private static Said trial(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    List<String> all = new ArrayList<>(List.of("trial"));
    all.addAll(List.of(arguments));
    int code = Main.run(all.toArray(String[]::new), new PrintWriter(out), new PrintWriter(err));
    return new Said(code, out.toString(), err.toString());
  }

  /** 7.7 kW at 40 %, NFPA 70 220.82(B), is 3080 VA or 12.8 A. */
  @Test
  void aChargerOnTheService() {
    Said said = trial(HOUSE, "--add", "vehicle charger 7.7 kW", "--format", "csv");
    assertThat(said.code).as(said.err).isEqualTo(ExitCode.FINE);
    String[] optional = said.out.lines().filter(l -> l.startsWith("main,optional,")).findFirst().orElseThrow().split(",");
    assertThat(Double.parseDouble(optional[4]) - Double.parseDouble(optional[2])).isEqualTo(3080);
    assertThat(Double.parseDouble(optional[7])).isCloseTo(200 - Double.parseDouble(optional[5]), offset(1e-6));
    assertThat(optional[8]).isEqualTo("fits");
    assertThat(said.out).contains("vehicle charger 7.7 kW");
    assertThat(trial(HOUSE, "--add", "vehicle charger 7.7 kW").out).contains("main: is large enough by NFPA 70 "
        + "220.82", "Before.", "After.");
  }

  @Test
  void aPanelWhoseFeederIsTooSmall() {
    Said said = trial(HOUSE, "--add", "vehicle charger 7.7 kW", "--to", "G");
    assertThat(said.code).isEqualTo(ExitCode.FOUND);
    assertThat(said.out).contains("G: is too small", "main: is large enough", "next standard rating");
  }

  @Test
  void severalLoadsAndSeveralDwellings() {
    Said two = trial(HOUSE, "--add", "hot tub 50 A", "--add", "air conditioner 20 A", "--format", "csv");
    assertThat(two.out).contains("hot tub 50 A").contains("air conditioner 20 A");
    String flats = "examples/linden-row/house.wattle";
    assertThat(trial(flats, "--add", "hot tub 30 A").err).contains("say with --to which panel");
    Said one = trial(flats, "--add", "water heater 4.5 kW", "--to", "U", "--format", "csv");
    assertThat(one.out).contains("U,optional,", "main,multifamily-optional,");
    // 45 % of one heater, NFPA 70 220.84: only one of the three alike gets it.
    String[] main = one.out.lines().filter(l -> l.startsWith("main,multifamily-optional,")).findFirst().orElseThrow().split(",");
    assertThat(Double.parseDouble(main[4]) - Double.parseDouble(main[2])).isCloseTo(0.45 * 4500, offset(1e-6));
  }

  @Test
  void whatCannotBeAdded() {
    assertThat(trial(HOUSE, "--add", "hott tub 30 A").err).contains("no part is called 'hott tub'", "fix: write hot tub");
    assertThat(trial(HOUSE, "--add", "hot tub").err).contains("states no load");
    assertThat(trial(HOUSE, "--add", "light 20 W").err).contains("in the floor area");
    assertThat(trial(HOUSE, "--add", "range 8 kW } room x {").code).isEqualTo(ExitCode.USAGE);
    assertThat(trial(HOUSE, "--add", "range 8 kW", "--to", "Q").err).contains("no panel is called 'Q'");
    assertThat(trial(HOUSE, "--to", "G").err).contains("give --add too");
    assertThat(trial(HOUSE, "--add", "range 8 kW", "--stated").code).isEqualTo(ExitCode.USAGE);
  }
}
