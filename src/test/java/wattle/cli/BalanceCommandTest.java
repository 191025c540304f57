package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.golden.Golden;

/** {@code balance} at the command line: what it prints, and that {@code --write} changes slot numbers and nothing else. */
class BalanceCommandTest {
  private static final String HOUSE = "examples/alder-court/house.wattle";

  @TempDir
  private Path folder;

  private record Ran(int code, String out, String err) {}

  private static Ran run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  private Path copyOfAlderCourt() throws IOException {
    for (String file : List.of("house.wattle", "rooms.wattle", "garage.wattle")) {
      Files.copy(Path.of("examples/alder-court", file), folder.resolve(file));
    }
    return folder.resolve("house.wattle");
  }

  @Test
  void alderCourt() {
    Ran ran = run("balance", HOUSE);
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
    assertThat(ran.err).isEmpty();
    Golden.check(Path.of("src/test/resources/balance/alder-court.txt"), ran.out);
  }

  @Test
  void onePanelAndFewMoves() {
    Ran ran = run("balance", "--panel", "P", "--moves", "1", "--format", "csv", HOUSE);
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
    assertThat(ran.out).contains("P,proposed").doesNotContain("G,as it is").contains("panel,feeds,from,to");
    assertThat(run("balance", "--moves", "0", HOUSE).out).contains("Moves: none").doesNotContain("proposed");
    assertThat(run("balance", "--format", "json", HOUSE).out).startsWith("{").contains("\"balance-moves\"");
    assertThat(run("balance", "--format", "md", HOUSE).out).contains("| P | as it is |");
  }

  @Test
  void writingChangesSlotNumbersAloneAndTheLegsAreThenAsPromised() throws IOException {
    Path house = copyOfAlderCourt();
    String before = Files.readString(house);
    String garage = Files.readString(folder.resolve("garage.wattle"));
    String rooms = Files.readString(folder.resolve("rooms.wattle"));
    Ran ran = run("balance", "--write", house.toString());
    assertThat(ran.code).as(ran.err).isEqualTo(ExitCode.FINE);
    assertThat(ran.err).contains("house.wattle: slots changed").contains("garage.wattle: slots changed").doesNotContain("rooms");
    String numbers = "(?m)^( *)\\d+[ab]?((\\+\\d+)?  +\\d+ A )";
    assertThat(Files.readString(house)).isNotEqualTo(before);
    assertThat(Files.readString(house).replaceAll(numbers, "$1#$2")).isEqualTo(before.replaceAll(numbers, "$1#$2"));
    assertThat(Files.readString(folder.resolve("garage.wattle")).replaceAll(numbers, "$1#$2"))
        .isEqualTo(garage.replaceAll(numbers, "$1#$2"));
    assertThat(Files.readString(folder.resolve("rooms.wattle"))).isEqualTo(rooms);
    assertThat(run("check", "--strict", house.toString()).code).isEqualTo(ExitCode.FINE);
    Ran again = run("balance", "--write", house.toString());
    assertThat(again.out).contains("Moves: none");
    assertThat(again.err).contains("not changed, nothing to move");
    try (var files = Files.list(folder)) {
      assertThat(files).as("no file is left beside them").hasSize(3);
    }
  }

  @Test
  void placesThatNameABreakerByItsSlotFollowIt() throws IOException {
    String plan = """
        \uFEFFservice main 120/240 V 100 A { earth rods by 6 Cu }
        panel P from main { bus 100 A slots 8 bonded
          1 20 A b1
          5 20 A b2
          2+4 30 A two-pole sub
        }
        panel sub from P/2 by 5 m of 10/3 NM-B { bus 60 A slots 4 }
        branch b1 by 12/2 NM-B { P --5 m-- r.h1 }
        branch b2 by 12/2 NM-B { P --5 m-- r.h2 }
        room r { h1: baseboard heater 1 kW 120 V   h2: baseboard heater 1 kW 120 V }
        trial t { open breaker P/1 }
        expect voltage at r.h2 is at least 100 V in t
        """.replace("\n", "\r\n");
    Path file = Files.writeString(folder.resolve("a.wattle"), plan, StandardCharsets.UTF_8);
    Ran ran = run("balance", "--write", file.toString());
    assertThat(ran.code).as(ran.err).isEqualTo(ExitCode.FINE);
    String moved = plan.replace("  1 20 A", "  3 20 A").replace("P/1", "P/3");
    String other = plan.replace("  5 20 A", "  3 20 A");
    assertThat(Files.readString(file)).isIn(moved, other);
    assertThat(run("check", file.toString()).code).isEqualTo(ExitCode.FINE);
  }

  @Test
  void pinnedBackFedAndNamedLegsStay() throws IOException {
    Path file = Files.writeString(folder.resolve("a.wattle"), """
        service main 120/240 V 100 A { }
        panel P from main { bus 100 A slots 12
          1 20 A pinned b1
          5 20 A back-fed spare
          2+4 20 A two-pole b2
        }
        branch b1 by 12/2 NM-B { P --5 m-- r.h1 }
        branch b2 by 12/3 NM-B { P --5 m-- r.h2 on A --5 m-- r.h3 on B }
        room r { h1: baseboard heater 1 kW 120 V   h2: baseboard heater 1 kW 120 V  h3: light 10 W }
        """);
    Ran ran = run("balance", file.toString());
    assertThat(ran.out).contains("Moves: none").contains("no breaker may move").contains("pinned: 1")
        .contains("a source feeds back through it: 5").contains("its branch names the legs of its devices: 2+4");
  }

  @Test
  void badUsageIsOneLine() throws IOException {
    assertThat(run("balance", "--panel", "X", HOUSE).err).contains("the plan has no panel 'X'; it has P, G");
    assertThat(run("balance", "--moves", "-1", HOUSE).code).isEqualTo(ExitCode.USAGE);
    assertThat(run("balance", "--write", "-").err).contains("standard input cannot be changed in place");
    Path none = Files.writeString(folder.resolve("none.wattle"), "room r { }\n");
    assertThat(run("balance", none.toString()).code).isEqualTo(ExitCode.FINE);
  }

  @Test
  void aPanelWithMorePolesThanSlotsIsAFinding() throws IOException {
    Path file = Files.writeString(folder.resolve("a.wattle"), """
        service main 120/240 V 100 A { }
        panel P from main { bus 100 A slots 2
          1 20 A spare
          2a 20 A spare
          2b 20 A spare
          3 20 A spare
        }
        """);
    Ran ran = run("check", file.toString());
    assertThat(ran.out).contains("panel-overfull").contains("take 3 slots and it has 2").contains("2 full-size and 2 half-size");
    assertThat(run("balance", file.toString()).code).isEqualTo(ExitCode.FOUND);
  }
}
