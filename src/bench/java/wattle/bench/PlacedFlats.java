package wattle.bench;

/** The tower of {@link Flats} by patterns: one flat and one floor of forty flats are written, and placed as often as need be. */
final class PlacedFlats {
  private static final int ON_A_FLOOR = 40;

  private PlacedFlats() {}

  /** @param flats a multiple of forty, 8,000 at most */
  static String plan(int flats) {
    int floors = flats / ON_A_FLOOR;
    return """
        plan "Tower of placed flats"
        use code us-2023
        service main 120/240 V 20000 A { source available 65 kA }

        panel H from main {
          bus 20000 A   slots %d   bonded
          (2 * f - 1)+(2 * f) 1200 A 65 kA two-pole floor{f} for f from 1 to %d
          order one-column
        }

        pattern flat(n, kind) {
          dwelling flat "Flat {n}" on flat { floor-area (60 m2 + n * 1 m2) }
          panel flat by 14 m of 2/3 NM-B {
            slots 12
            1+3  40 A  two-pole                range
            2    20 A  arc-fault ground-fault  counter
            4    20 A  arc-fault ground-fault  window
            5+7  20 A  two-pole                heat
            6    15 A  arc-fault               light
          }
          branch range   by 8/3 NM-B                     { flat --5 m-- kitchen.range }
          branch counter by 12/2 NM-B is small-appliance { flat --6 m-- kitchen.c1 }
          branch window  by 12/2 NM-B is small-appliance { flat --8 m-- kitchen.c2 }
          branch heat    by 12/2 NM-B                    { flat --7 m-- living.heater --5 m-- living.heater2 }
          branch light   by 14/2 NM-B                    { flat --6 m-- living.sw --3 m-- living.lamp }
          room kitchen { range: range (kind)   c1: receptacle 20 A   c2: receptacle 20 A }
          room living {
            heater: baseboard heater 1.5 kW   heater2: baseboard heater 1 kW
            sw: switch for lamp   lamp: light 12 W
          }
        }

        pattern floor(f) {
          panel floor "Floor {f}" by 10 m of 600/3 NM-B {
            order one-column   slots %d
            (2 * n - 1)+(2 * n) 100 A 22 kA two-pole flat{n} for n from 1 to %d
          }
          place flat(n, (8 kW + f * 10 W)) as flat{n} for n from 1 to %d
        }

        place floor(f) as floor{f} for f from 1 to %d
        """
        .formatted(2 * floors, floors, 2 * ON_A_FLOOR, ON_A_FLOOR, ON_A_FLOOR, floors);
  }
}
