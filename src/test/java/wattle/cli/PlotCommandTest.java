package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code draw} of plots and {@code table --of faults}, as a user types them. */
class PlotCommandTest {
  private static final String HOUSE = "examples/alder-court/house.wattle";

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... arguments) {
    return Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
  }

  @Test
  void aPlotGoesToStandardOutputOrToAFile(@TempDir Path folder) throws Exception {
    assertThat(run("draw", "--view", "trip", "--of", "bed1", HOUSE)).isZero();
    assertThat(out.toString()).startsWith("<?xml").contains("Time and current: bed1");
    Path png = folder.resolve("voltage.png");
    assertThat(run("draw", "--view", "voltage", "--of", "bed1", "--out", png.toString(), HOUSE)).isZero();
    assertThat(Files.readAllBytes(png)).startsWith(0x89, 'P', 'N', 'G');
    assertThat(run("draw", "--view", "legs", "--out", folder.resolve("legs.svg").toString(), HOUSE)).isZero();
    assertThat(Files.readString(folder.resolve("legs.svg"))).contains("Load of each leg");
  }

  @Test
  void whatCannotBeDrawnIsTold() {
    assertThat(run("draw", "--view", "trip", HOUSE)).isEqualTo(2);
    assertThat(err.toString()).contains("name it with --of");
    assertThat(run("draw", "--view", "trip", "--of", "bed", HOUSE)).isEqualTo(2);
    assertThat(err.toString()).contains("no branch is called 'bed'").contains("bed1");
    assertThat(run("draw", "--view", "legs", "--format", "dot", HOUSE)).isEqualTo(2);
    assertThat(err.toString()).contains("a plot is not a graph");
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void theTableOfFaults() {
    assertThat(run("table", "--of", "faults", "--format", "csv", HOUSE)).isZero();
    assertThat(out.toString()).startsWith("row,name,place,line-line-most-a").contains("\nbranch,hall,stair.lamp,");
  }
}
