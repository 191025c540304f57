package wattle.loads;

import wattle.compiler.Compilation;

/**
 * An invented block of six flats on a three-phase service 120/208 V, two between each pair of legs, with a house panel that belongs to
 * none of them: corridor lights that burn all day, a stairwell, receptacles for cleaning.
 */
final class QuarryTerrace {
  private QuarryTerrace() {}

  static Compilation plan() {
    return LarchMews.compile(text());
  }

  static String text() {
    return """
        plan "Quarry Terrace" revision "A"
        use code us-2023
        service main 120/208 V three-phase 400 A {
          source transformer 150 kVA 3 % ratio 3
          earth water-pipe by 2 Cu
          earth rods by 6 Cu 25 ohm
        }
        panel M "Main switchboard" from main { bus 400 A slots 30 bonded terminals 75 degC Cu Al
          main breaker 400 A 22 kA
          (1 + 4 * (k - 1))+(3 + 4 * (k - 1)) 100 A 22 kA two-pole flat{k} "Flat {k}" for k from 1 to 6
          2+4+6 60 A 22 kA three-pole H "House panel" }
        panel H "House panel" from M by 5 m of 6/4 MC { bus 100 A slots 12
          1 20 A corridor "Corridor lights"
          2 20 A stairs "Stairwell lights"
          3 20 A cleaning "Receptacles for cleaning" }
        branch corridor by 12/2 MC { H --6 m-- corridor.sw --3 m-- corridor.lamps }
        branch stairs by 12/2 MC { H --6 m-- stairs.sw --3 m-- stairs.lamp }
        branch cleaning by 12/2 MC { H --6 m-- corridor.o1 --9 m-- corridor.o2 }
        room corridor "Corridor" is corridor { sw: switch 20 A for lamps   lamps: light 1200 VA continuous
          o1: receptacle tamper-resistant   o2: receptacle tamper-resistant }
        room stairs "Stairs" is stairwell { sw: switch 20 A for lamp   lamp: light 800 VA }
        room lift "Lift machines" is lift-machine-room { }
        pattern flat(k) {
          dwelling flat "Flat {k}" on flat { floor-area 60 m2 }
          panel flat "Flat {k}" by 12 m of 2/3 MC { bus 125 A slots 12
            1+3 50 A two-pole ground-fault range "Range"
            2 20 A arc-fault ground-fault left "Counter, left"
            4 20 A arc-fault ground-fault right "Counter, right"
            5 15 A hall "Hall" }
          branch range by 6/3 MC { flat --6 m-- kitchen.range }
          branch left by 12/2 MC is small-appliance { flat --6 m-- kitchen.c1 }
          branch right by 12/2 MC is small-appliance { flat --6 m-- kitchen.c2 }
          branch hall by 14/2 MC { flat --3 m-- hall.sw --3 m-- hall.lamp }
          room kitchen { range: range 11 kW   c1: receptacle 20 A at counter tamper-resistant
            c2: receptacle 20 A at counter tamper-resistant }
          room hall { sw: switch for lamp   lamp: light 40 W } }
        place flat(k) as flat{k} for k from 1 to 6
        """;
  }
}
