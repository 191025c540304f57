package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code begin --from}: schedules as spreadsheets and utilities write them, all of houses that we invented. */
class BeginFromScheduleTest {
  @TempDir
  private Path folder;

  private record Ran(int code, String out, String err) {}

  private static Ran run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  private Ran begin(String csv, String... more) throws IOException {
    Path file = Files.writeString(folder.resolve("schedule.csv"), csv);
    List<String> arguments = new java.util.ArrayList<>(List.of("begin", "--from", file.toString(), "--out", "-"));
    arguments.addAll(List.of(more));
    return run(arguments.toArray(String[]::new));
  }

  /** Slot lines of the plan without its blanks; the plan has no error. */
  private List<String> slots(Ran ran) throws IOException {
    assertThat(ran.code).as(ran.err).isEqualTo(ExitCode.FINE);
    Path plan = Files.writeString(folder.resolve("plan.wattle"), ran.out);
    Ran checked = run("check", plan.toString());
    assertThat(checked.code).as(checked.out).isEqualTo(ExitCode.FINE);
    assertThat(run("tidy", "--check", plan.toString()).code).isEqualTo(ExitCode.FINE);
    return ran.out.lines().map(l -> l.strip().replaceAll(" +", " ")).filter(l -> l.matches("\\d+[ab]?(\\+\\d+)* \\d+ A .*")).toList();
  }

  @Test
  void columnsInAnyOrderWithTheUsualHeadings() throws IOException {
    List<String> expected = List.of("1 15 A c1 \"Hall\"", "2+4 30 A two-pole c2 \"Dryer\"");
    assertThat(slots(begin("slot,rating,poles,description\n1,15,1,Hall\n\"2,4\",30 A,2,Dryer\n"))).isEqualTo(expected);
    assertThat(slots(begin("Load Served;Ckt #;Poles;Amps;Wire\nHall;1;1P;15A;14\nDryer;2-4;2P;30A;10\n"))).isEqualTo(expected);
    assertThat(slots(begin("\uFEFFDescription\tCircuit No.\tBreaker (A)\r\nHall\t1\t15\r\nDryer\t2/4\t30/2\r\n"))).isEqualTo(expected);
    assertThat(slots(begin("# , Trip , Serves\n 1 , 15 amps , Hall\n 2 & 4 , 2P30 , Dryer\n"))).isEqualTo(expected);
  }

  @Test
  void twoSidesOfAPanel() throws IOException {
    Ran ran = begin("CKT,LOAD,AMP,AMP,LOAD,CKT\n1,Hall,15,20,Bath,2\n3,\"Range, oven\",50/2,20,Kitchen,4\n5,\"\"\"\",,,Space,6\n");
    assertThat(slots(ran)).containsExactly("1 15 A c1 \"Hall\"", "2 20 A c2 \"Bath\"", "3+5 50 A two-pole c3 \"Range, oven\"",
        "4 20 A c4 \"Kitchen\"");
    assertThat(ran.err).contains("assumed: the 2-pole breaker in slot 3 is assumed to be in 3+5");
  }

  @Test
  void tandemSpareBlankAndOddRows() throws IOException {
    Ran ran = begin("""
        Account 0000-1
        Panel P; Garage side

        Slot;Rating;Description;Type
        Main;200 A;;
        1;20A;Spare;
        2A;15;Porch;
        2b;15;Attic;
        3;;;
        4;;Space;
        5;20;Laundry;GFCI
        6;15;Bedroom;AFCI
        7;15;West;
        7;20;East;
        9;;Doorbell;
        ;;;
        Total connected;;4200 VA;
        """);
    assertThat(slots(ran)).containsExactly("1 20 A spare", "2a 15 A c2a \"Porch\"", "2b 15 A c2b \"Attic\"",
        "5 20 A ground-fault c5 \"Laundry\"", "6 15 A arc-fault c6 \"Bedroom\"", "7a 15 A c7a \"West\"", "7b 20 A c7b \"East\"");
    assertThat(ran.out).contains("main breaker 200 A", "120/240 V 200 A existing")
        .contains("// - slot 7 is in the schedule twice", "// - slot 9 (Doorbell) has no rating", "'Total connected' is not a slot");
    assertThat(ran.out.lines().filter(l -> l.startsWith("// - ")).map(l -> "assumed: " + l.substring(5)))
        .allSatisfy(l -> assertThat(ran.err).contains(l));
    assertThat(ran.out).doesNotContain("names no main");
  }

  @Test
  void otherSupplies() throws IOException {
    assertThat(slots(begin("slot,rating,description\n1-5,60,Chiller\n2,20,Office\n", "--system", "208Y/120")))
        .containsExactly("1+3+5 60 A three-pole later \"Chiller\"", "2 20 A c2 \"Office\"");
    assertThat(slots(begin("slot,rating,description\n1,16,Sockets\n2,32,Cooker\n", "--system", "230")))
        .containsExactly("1 16 A type-b c1 \"Sockets\"", "2 32 A type-b c2 \"Cooker\"");
    assertThat(begin("slot,rating,description\n1,15,Hall\n", "--service", "125", "--title", "Larkspur Row 4").out)
        .contains("plan \"Larkspur Row 4\"", "the schedule names no main; 125 A is assumed");
    assertThat(slots(begin("slot,fuse,description\n1,15,Hall\n2,30,Stove\n", "--work", "fuses", "--service", "60")))
        .containsExactly("1 15 A fuse c1 \"Hall\"", "2 30 A fuse c2 \"Stove\"");
  }

  /** Copper by NFPA 70-2023 240.4(D) and table 310.16 at 60 °C: 8 AWG carries 40 A, 6 AWG 55 A. Above, a breaker rather feeds a panel. */
  @Test
  void cablesFitTheirBreakers() throws IOException {
    Ran ran = begin("slot,rating,description\n1,15,a\n2,20,b\n3,30,c\n4,40,d\n5,50,e\n6,60,f\n");
    assertThat(ran.out).contains("c1 by 14/2 NM-B", "c2 by 12/2 NM-B", "c3 by 10/2 NM-B", "c4 by 8/2 NM-B", "c5 by 6/2 NM-B")
        .doesNotContain("branch c6").contains("what 6 (60 A) feeds is left for later", "too large for its cable cannot be found");
    assertThat(slots(ran)).hasSize(6);
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = """
      slot,rating,description~1,2O A,Hall | :2:3 | '2O A' is not a rating | amperes such as 20 or 20 A are expected here
      slot,rating,description~1,15,a~x7,20,b | :3:1 | 'x7' is not a slot | a number such as 7, 2+4
      slot,rating,description~1,15,a~2,20,b~1-3,30,c | :4:1 | slot 1+3 is taken by 'a' in 1 | another slot
      slot,rating,poles~1-3,30,1 | :2:8 | '1' does not fit slots 1-3 | 2 poles or other slots
      slot,rating,poles~1,30,3 | :2:6 | a breaker of 3 poles has no place on a supply of 2 legs | --system 208Y/120
      slot,rating~99,30 | :2:1 | slot 99 is not in any panel | from 1 to 84
      slot,rating~"1,2",30 | :2:1 | slots 1+2 are not one below the other | such as 1+3
      name,color~a,b | :1:1 | no line has the headings | name the columns slot, rating
      slot,rating,description~1,,Hall | :1:1 | no row of the schedule has a breaker | slot and rating
      """)
  void mistakesHaveAPlaceAndAFix(String csv, String place, String headline, String words) throws IOException {
    Ran ran = begin(csv.replace('~', '\n') + "\n");
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.out).isEmpty();
    assertThat(ran.err).contains("schedule.csv" + place, headline, words, "fix: ", "no plan was written");
  }

  @Test
  void whereItIsWritten() throws IOException {
    Path csv = Files.writeString(folder.resolve("s.csv"), "slot,rating,description\n1,15,Hall\n");
    Path plan = folder.resolve("house.wattle");
    assertThat(run("begin", "--from", csv.toString(), "-o", plan.toString()).err).contains("a first plan");
    assertThat(plan).content().contains("branch c1 by 14/2 NM-B existing");
    assertThat(run("begin", "--from", csv.toString(), "-o", plan.toString()).err).contains("it exists");
    assertThat(run("begin", "--bedrooms", "1", "--out", folder.resolve("b.wattle").toString()).code).isEqualTo(ExitCode.FINE);
    assertThat(run("begin", "--bedrooms", "1", "--out", "-", "x.wattle").err).contains("leave one out");
    assertThat(run("begin", "--from", folder.resolve("none.csv").toString(), "-").err).contains("no such file");
    assertThat(begin("slot,rating\n1,\"15\n").err).contains("cannot be read as CSV");
  }
}
