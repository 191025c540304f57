package wattle.loads;

import java.nio.file.Path;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;

/**
 * An invented duplex: each dwelling on two legs of a three-phase service 120/208 V, the first on A and B, the second on B and C, or
 * as asked. Appliances are marked for 240 V, but for the range of the second dwelling.
 */
public final class LarchMews {
  private LarchMews() {}

  /** As described. */
  public static Compilation plan() {
    return compile(text("4+6"));
  }

  /**
   * The text.
   *
   * @param second slots of the way to the second dwelling: 4+6 for legs B and C, 2+4 for A and B, 7+9 as well, 9+11 for B and C
   */
  public static String text(String second) {
    return """
        plan "Larch Mews" revision "A"
        use code us-2023
        dwelling east "East" on EAST { floor-area 90 m2 storeys 1 }
        dwelling west "West" on WEST { floor-area 90 m2 storeys 1 }
        service main 120/208 V three-phase 225 A {
          source transformer 75 kVA 2 %% ratio 2
          run 10 m of 2.5 in RMC with 4 x 4/0 Cu THWN
          surge-protection
          outdoor-disconnect
          earth water-pipe by 2 Cu
          earth rods by 6 Cu 25 ohm
        }
        panel M "Meter main" from main { bus 225 A slots 12 bonded terminals 75 degC Cu Al
          main breaker 225 A 22 kA
          1+3 110 A 22 kA two-pole EAST "East"
          %s 110 A 22 kA two-pole WEST "West" }
        """.formatted(second) + dwelling("EAST", "e", "9 kW 240 V", 12) + dwelling("WEST", "w", "9 kW", 14);
  }

  private static String dwelling(String panel, String room, String range, int meters) {
    return """
        panel P_ from M by %d m of 1/0-1/0-1/0-4 Al SER { bus 125 A slots 20 terminals 75 degC Cu Al
          main breaker 110 A 22 kA
          1+3 50 A two-pole ground-fault range_
          2+4 30 A two-pole ground-fault dryer_
          5+7 25 A two-pole water_
          6 20 A arc-fault ground-fault left_
          8 20 A arc-fault ground-fault right_
          9 20 A arc-fault ground-fault laundry_ }
        branch range_ by 6/3 NM-B { P_ --8 m-- k_.range }
        branch dryer_ by 10/3 NM-B { P_ --7 m-- u_.dryer }
        branch water_ by 10/2 NM-B { P_ --6 m-- u_.water }
        branch left_ by 12/2 NM-B is small-appliance { P_ --9 m-- k_.c1 }
        branch right_ by 12/2 NM-B is small-appliance { P_ --9 m-- k_.c2 }
        branch laundry_ by 12/2 NM-B is laundry { P_ --5 m-- u_.washer }
        room k_ is kitchen { range: range %s  c1: receptacle 20 A at counter tamper-resistant
          c2: receptacle 20 A at counter tamper-resistant }
        room u_ is laundry { dryer: dryer 5.4 kW 240 V  water: water heater 4.5 kW 240 V
          washer: receptacle 20 A tamper-resistant }
        """.formatted(meters, range).replace("P_", panel).replaceAll("(?<=[a-z])_", room);
  }

  static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("larch-mews.wattle", text), Path.of("larch-mews.wattle"));
  }
}
