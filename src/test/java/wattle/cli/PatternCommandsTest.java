package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What commands make of a plan with patterns: names that can be read, and texts that are changed soundly or not at all. */
class PatternCommandsTest {
  private static final Path TERN_COURT = Path.of("examples/tern-court/house.wattle");

  /** Two flats whose legs are uneven: what is on slots 1 and 2 is all on leg A. */
  private static final String UNEVEN = """
      plan "Uneven"

      service main 120/240 V 200 A { source available 10 kA   earth rods by 4 Cu }

      panel M "Meter stack" from main {
        bus 200 A   slots 12   bonded
        main breaker 200 A 10 kA

        (4 * n - 3)+(4 * n - 1)  60 A  two-pole  flat{n}  "Flat {n}" for n from 1 to 2
      }

      pattern flat(n, load) {
        panel flat "Flat {n}" by 9 m of 6/3 NM-B {
          bus 100 A   slots 8

          1  20 A  arc-fault  heat   "Heater"
          2  20 A  arc-fault  bath   "Bathroom heater"
          4  15 A  arc-fault  light  "Light"
        }
        branch heat  by 12/2 NM-B { flat --5 m-- room.heater }
        branch bath  by 12/2 NM-B { flat --5 m-- room.second }
        branch light by 14/2 NM-B { flat --5 m-- room.lamp }

        room room is living {
          heater: baseboard heater 1500 W 120 V
          second: baseboard heater (load) 120 V
          lamp:   light 12 W
        }
      }

      place flat(1, 1200 W) as flat1
      place flat(2, 1200 W) as flat2
      """;

  @TempDir
  private Path folder;

  private record Ran(int code, String out, String err) {}

  private static Ran run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  private String file(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.writeString(file, text);
    return file.toString();
  }

  @Test
  void slotsThatAllPlacementsAgreeOnAreWrittenIntoThePattern() throws IOException {
    String plan = file("uneven.wattle", UNEVEN);
    Ran ran = run("balance", "--panel", "flat1", "--panel", "flat2", "--write", plan);
    assertThat(ran.err).contains("slots changed");
    String written = Files.readString(Path.of(plan));
    assertThat(written).isNotEqualTo(UNEVEN);
    assertThat(written.replaceAll("\\d+(?=  (?:20|15) A)", "_")).isEqualTo(UNEVEN.replaceAll("\\d+(?=  (?:20|15) A)", "_"));
    assertThat(run("balance", "--panel", "flat1", "--panel", "flat2", "--write", plan).err).contains("nothing to move");
  }

  @Test
  void slotsThatPlacementsDisagreeOnAreRefused() throws IOException {
    String text = UNEVEN.replace("place flat(2, 1200 W)", "place flat(2, 1 W)");
    String plan = file("disagree.wattle", text);
    Ran ran = run("balance", "--panel", "flat1", "--write", plan);
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err).contains("nothing written", "one text").contains("for panel flat1").contains("for panel flat2");
    assertThat(Files.readString(Path.of(plan))).isEqualTo(text);
  }

  @Test
  void aSlotThatIsWorkedOutIsNotWrittenOver() throws IOException {
    // Both meters stand on the same rows, and only a panel's own light can tell the legs apart: it is put on the heavier one.
    String text = UNEVEN.replace(
        "for n from 1 to 2\n", "for n from 1 to 2\n  (9)  20 A  arc-fault  yard  \"Yard\"\n  (10)  20 A  arc-fault  shed  \"Shed\"\n")
        + "branch yard by 12/2 NM-B { M --5 m-- yard.heater }\nroom yard is utility { heater: baseboard heater 1500 W 120 V }\n"
        + "branch shed by 12/2 NM-B { M --5 m-- shed.heater }\nroom shed is utility { heater: baseboard heater 1500 W 120 V }\n";
    String plan = file("computed.wattle", text);
    Ran ran = run("balance", "--panel", "M", "--write", plan);
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err).contains("is calculated by '(");
    assertThat(Files.readString(Path.of(plan))).isEqualTo(text);
  }

  @Test
  void oneEditOfAPatternIsOneLineOfAComparison() throws IOException {
    String court = Files.readString(TERN_COURT);
    String after = file("after.wattle",
        court.replace("    2    20 A  arc-fault ground-fault  counter   ", "    8    20 A  arc-fault ground-fault  counter   "));
    Ran ran = run("compare", TERN_COURT.toString(), after);
    assertThat(ran.out.lines().filter(l -> l.startsWith("~ breaker")))
        .anySatisfy(l -> assertThat(l)
            .isEqualTo("~ breaker of flat1.counter: slot flat1/2 -> flat1/8; the same in flat2, flat3, flat4 and 4 more"));
    assertThat(ran.out.lines().filter(l -> l.contains("slot flat"))).hasSize(1);
    assertThat(run("compare", "--format", "json", TERN_COURT.toString(), after).out).contains("flat8.counter");
  }

  @Test
  void aMistakeInAPatternIsMendedInThePattern() throws IOException {
    String court = Files.readString(TERN_COURT);
    for (String word : new String[]{"flat --7 m-- bath.outlet", "--3 m-- bedroom.alarm"}) {
      String plan = file("mend.wattle", court.replace(word, word.substring(0, word.length() - 2) + word.charAt(word.length() - 1)));
      Ran ran = run("mend", "--write", plan);
      assertThat(ran.err).as(word).contains("1 mended");
      assertThat(Files.readString(Path.of(plan))).isEqualTo(court);
    }
  }

  /** A cable and a kind that are given are mended where they are given, and compared as what they came to. */
  @Test
  void whatIsGivenIsMendedAndComparedWhereItIsGiven() throws IOException {
    String court = Files.readString(TERN_COURT);
    String plan = file("given.wattle", court.replace("by 14/2 NM-B, \"ceiling fan\"", "by 14/2 NM-BX, \"ceilng fan\""));
    assertThat(run("check", plan).out).containsOnlyOnce("called 'NM-BX'").containsOnlyOnce("called 'ceilng fan'");
    assertThat(run("mend", "--write", plan).err).contains("mended");
    assertThat(Files.readString(Path.of(plan))).isEqualTo(court);
    String after = file("after.wattle", court.replace("by 14/2 NM-B, \"ceiling fan\"", "by 12/2 NM-B, light"));
    assertThat(run("compare", TERN_COURT.toString(), after).out)
        .contains("cable 14/2 NM-B -> 12/2 NM-B", "ceiling fan replaced by light");
    assertThat(run("balance", TERN_COURT.toString()).code).isEqualTo(ExitCode.FINE);
  }

  @Test
  void theBoundOfPatternsHasASwitch() throws IOException {
    String plan = file("bound.wattle", UNEVEN);
    Ran ran = run("check", "--most-placed", "9", plan);
    assertThat(ran.code).isEqualTo(ExitCode.FOUND);
    assertThat(ran.out).contains("patterns place more than 9 items", "--most-placed");
    assertThat(run("check", "--most-placed", "10", plan).out).doesNotContain("patterns-too-large");
  }

  @Test
  void namesOfPlacementsAreReadEverywhere() {
    String court = TERN_COURT.toString();
    assertThat(run("lockout", court, "flat7.kitchen.c1").out).contains("flat7/2", "flat7.counter");
    assertThat(run("trial", court, "flat3.breakfast").out).contains("flat3.kitchen.c1");
    assertThat(run("table", "--of", "rooms", "--format", "csv", court).out).contains("flat8.bed2.lamp");
    assertThat(run("table", "--of", "panel", "--format", "csv", court).out).contains("Flat 8");
  }
}
