package wattle.materials;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.cli.Main;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Receptacles for what is plugged in, by their configuration in NEMA WD 6; what is removed; prices of the user's. */
class PluggedInTest {
  private static final String PLAN = """
      plan "Plugs"
      use code us-2023
      service main %s 200 A { source available 10 kA }
      panel P from main { bus 200 A   slots 20   bonded
        main breaker 200 A
        1+3   50 A two-pole  range   "Range"
        2+4   30 A two-pole  dryer   "Dryer"
        5     20 A  washer  "Washer"
        7+9   30 A two-pole  water   "Water heater"
        6     15 A  den     "Den"
        11    20 A existing old "Old"
      }
      branch range  by %s  { P --6 m-- k.range }
      branch dryer  by 10/3 NM-B { P --6 m-- k.dryer }
      branch washer by 12/2 NM-B { P --6 m-- k.washer }
      branch water  by 10/2 NM-B { P --6 m-- k.water }
      branch den    by 14/2 NM-B { P --6 m-- k.o1 --2 m-- k.o2 }
      branch old    existing by 12/2 NM-B { P --4 m to-remove-- k.saw }
      room k {
        range: range 12 kW   dryer: dryer 5.5 kW   washer: washer 900 W %s   water: water heater 4.5 kW
        o1: receptacle   o2: heavy receptacle   saw: table saw 1 hp to-remove
      }
      """;

  @TempDir
  Path folder;

  private static Compilation compile(String volts, String rangeCable, String washer) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("p.wattle", PLAN.formatted(volts, rangeCable, washer)),
        Path.of("p.wattle"));
  }

  private static List<String> items(Compilation plan) {
    return Materials.of(plan.house(), plan.library()).items().stream().map(Material::what).toList();
  }

  /** oncodes.ca, Appendix B rule 26-700: CSA Diagram 1 has the numbers of NEMA WD 6. */
  @Test
  void inCanadaConfigurationsAreThoseOfTheCode() throws SourceReader.Unreadable {
    Compilation house = new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/tamarack-road/house.wattle"));
    assertThat(items(house)).contains("receptacle CSA 14-50R for the range", "cord with plug CSA 14-30P for the dryer")
        .noneMatch(i -> i.contains("NEMA"));
  }

  /** NEMA WD 6: 14-50 and 14-30 are 125/250 V with ground, 10-50 is without, 5-15 and 5-20 are 125 V with ground. */
  @Test
  void receptaclesFitTheirCircuits() {
    assertThat(items(compile("120/240 V", "6/3 NM-B", ""))).contains("receptacle NEMA 14-50R for the range",
        "cord with plug NEMA 14-50P for the range", "receptacle NEMA 14-30R for the dryer", "cord with plug NEMA 14-30P for the dryer",
        "receptacle NEMA 5-20R for the washer", "washer, 900 W, cord and plug", "water heater, 4.5 kW, hard-wired",
        "receptacle, NEMA 5-15R, 15 A", "heavy receptacle, NEMA 5-20R, 20 A").noneMatch(i -> i.contains("for the water heater"));
    assertThat(items(compile("120/208 V", "6/3 NM-B", ""))).contains("receptacle NEMA 14-50R for the range");
    assertThat(items(compile("120/240 V", "6/3 NM-B without ground", ""))).contains("receptacle NEMA 10-50R for the range");
    assertThat(items(compile("120/240 V", "6/3 NM-B", "hardwired"))).contains("washer, 900 W, hard-wired")
        .doesNotContain("receptacle NEMA 5-20R for the washer");
  }

  /** Elsewhere other standards hold, and no configuration is named. */
  @Test
  void notOn230Volts() {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source("m.wattle", """
        plan "Metric"
        service main 230 V 60 A { source available 6 kA }
        panel P from main { bus 60 A   slots 6   order one-column   bonded
          main breaker 60 A
          1  16 A  sockets  "Sockets"
        }
        branch sockets by 2.5 mm2 TPS { P --12 m-- r.a --4 m-- r.w }
        room r { a: receptacle   w: washer 2 kW }
        """), Path.of("m.wattle"));
    assertThat(items(plan)).noneMatch(i -> i.contains("NEMA")).contains("washer, 2 kW, cord and plug");
  }

  @Test
  void whatIsRemovedIsListed() {
    List<Material> removed = Demolition.of(compile("120/240 V", "6/3 NM-B", "").house()).items();
    assertThat(removed).extracting(Material::what).containsExactly("12/2 NM-B", "box", "table saw");
    assertThat(removed.get(0).amount()).isEqualTo(4);
    assertThat(removed.get(0).places()).containsExactly("old");
  }

  private String run(int code, String... arguments) {
    StringWriter out = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(out))).as(out.toString()).isEqualTo(code);
    return out.toString();
  }

  /** 4 plates at 1.25 are 5.00; 14.74 m at 2 a meter are 29.48, and at 0.1 h a meter 1.47 h. Sum 34.48 and 1.47 h. */
  @Test
  void pricesAreAddedUp() throws Exception {
    String plan = "examples/kitchen-renovation/after.wattle";
    Path prices = Files.writeString(folder.resolve("prices.csv"), """
        item,unit,price,hours
        "cover plate, 1-gang",each,1.25,
        12/3 NM-B,m,2,0.1
        """);
    String csv = run(0, "table", "--of", "materials", "--prices", prices.toString(), "-f", "csv", plan);
    assertThat(csv).contains("\"cover plate, 1-gang\",4,,,").contains(",5,\r\n").contains(",29.48,1.47\r\n")
        .contains("sum,,,,,,34.48,1.47\r\n");
    assertThat(run(0, "table", "--of", "materials", "--prices", prices.toString(), plan))
        .contains("No price, so not in the sum: 12/2 NM-B;");
    Path wrong = Files.writeString(folder.resolve("wrong.csv"), "item,price\n12/3 NM-B,two\n");
    assertThat(run(2, "table", "--of", "materials", "--prices", wrong.toString(), plan)).contains("wrong.csv:2").contains("not a figure");
    assertThat(run(2, "table", "--of", "loads", "--prices", prices.toString(), plan)).contains("--of materials");
    assertThat(run(0, "table", "--of", "demolition", plan)).contains("To be removed");
  }
}
