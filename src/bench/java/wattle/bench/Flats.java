package wattle.bench;

/**
 * A plan of our own invention: a tower of flats, forty on a floor panel, each with a panel, a range, two counter branches,
 * two heaters and its lights.
 */
final class Flats {
  private static final int ON_A_FLOOR = 40;

  private Flats() {}

  static String plan(int flats) {
    int floors = (flats + ON_A_FLOOR - 1) / ON_A_FLOOR;
    StringBuilder plan = new StringBuilder("plan \"Tower of flats\"\nuse code us-2023\n");
    plan.append("service main 120/240 V 20000 A { source available 65 kA }\n");
    plan.append("panel H from main {\n  bus 20000 A   slots %d   bonded\n".formatted(4 * floors));
    for (int floor = 0; floor < floors; floor++) {
      plan.append("  %d+%d 1200 A 65 kA two-pole F%d\n".formatted(first(floor), first(floor) + 2, floor));
    }
    plan.append("}\n");
    for (int floor = 0; floor < floors; floor++) {
      int on = Math.min(ON_A_FLOOR, flats - floor * ON_A_FLOOR);
      plan.append("panel F%d from H/%d by 10 m of 600/3 NM-B {\n  slots %d\n".formatted(floor, first(floor), 4 * on));
      for (int i = 0; i < on; i++) {
        plan.append("  %d+%d 100 A 22 kA two-pole P%d\n".formatted(first(i), first(i) + 2, floor * ON_A_FLOOR + i));
      }
      plan.append("}\n");
    }
    for (int flat = 0; flat < flats; flat++) {
      flat(plan, flat);
    }
    return plan.toString();
  }

  /** The first slot of the n-th two-pole breaker: 1, 2, 5, 6, … */
  private static int first(int n) {
    return n / 2 * 4 + n % 2 + 1;
  }

  private static void flat(StringBuilder plan, int n) {
    plan.append("dwelling d%d on P%d { floor-area %d m2 }\n".formatted(n, n, 60 + n % 30));
    plan.append("panel P%d from F%d/%d by 14 m of 2/3 NM-B {\n".formatted(n, n / ON_A_FLOOR, first(n % ON_A_FLOOR)));
    plan.append("  slots 12\n  1+3 40 A two-pole range%d\n  2 20 A arc-fault ground-fault ca%d\n".formatted(n, n));
    plan.append("  4 20 A arc-fault ground-fault cb%d\n  5+7 20 A two-pole heat%d\n  6 15 A arc-fault light%d\n}\n".formatted(n, n, n));
    plan.append("branch range%d by 8/3 NM-B { P%d --5 m-- k%d.range }\n".formatted(n, n, n));
    plan.append("branch ca%d by 12/2 NM-B is small-appliance { P%d --6 m-- k%d.c1 }\n".formatted(n, n, n));
    plan.append("branch cb%d by 12/2 NM-B is small-appliance { P%d --8 m-- k%d.c2 }\n".formatted(n, n, n));
    plan.append("branch heat%d by 12/2 NM-B { P%d --7 m-- l%d.heater --5 m-- l%d.heater2 }\n".formatted(n, n, n, n));
    plan.append("branch light%d by 14/2 NM-B { P%d --6 m-- l%d.sw --3 m-- l%d.lamp }\n".formatted(n, n, n, n));
    plan.append("room k%d is kitchen { range: range %d kW   c1: receptacle 20 A   c2: receptacle 20 A }\n".formatted(n, 8 + n % 5));
    plan.append("room l%d is living { heater: baseboard heater 1.5 kW  heater2: baseboard heater 1 kW  ".formatted(n));
    plan.append("sw: switch for lamp  lamp: light 12 W }\n");
  }
}
