package wattle.pattern;

import java.util.List;
import java.util.Random;

/**
 * Two plans of one random house: with patterns, and with every placement written out by hand. A name of a placement has a
 * dot where the written one, which may have none, has a hyphen.
 */
record Tower(long seed) {
  /** Names that the pattern gives, and so what stands after the dot. */
  private static final String LOCAL = "kitchen|hall|counter|lights|bed[0-9]+|duct|kettle|reach";

  /** How a line of a dwelling is written. */
  private record Hand(boolean pattern, String own, String patternsName, int number, int meters) {
    String local(String name) {
      return pattern ? name : own + "-" + name;
    }

    String self() {
      return pattern ? patternsName : own;
    }

    String hole() {
      return pattern ? "{n}" : Integer.toString(number);
    }

    String length(int more) {
      return pattern ? "(run + " + more + " m)" : meters + more + " m";
    }
  }

  String withPatterns() {
    Random random = new Random(seed);
    int flats = 1 + random.nextInt(4);
    int beds = random.nextInt(3);
    StringBuilder plan = new StringBuilder(head());
    if (beds > 0) {
      plan.append("pattern bed(source, n, run, feed, kind, trait) {\n").append(bed(new Hand(true, "", "bed", 0, 0), "source"))
          .append("}\n");
    }
    plan.append("pattern flat(n, run) {\n").append(flat(new Hand(true, "", "flat", 0, 0), beds));
    if (beds > 0) {
      plan.append("  place bed(flat, i, 5 m, by ").append(cable()).append(", ").append(named(kind(), random))
          .append(", tamper-resistant) as bed{i} for i from 1 to ").append(beds).append('\n');
    }
    plan.append("}\npanel M from main {\n  bus 400 A  slots 40  bonded  main breaker 400 A 22 kA\n");
    plan.append("  (4 * n - 3)+(4 * n - 1)  60 A two-pole flat{n} \"Flat {n}\" for n from 1 to ").append(flats).append("\n}\n");
    plan.append("place flat(n, (n * 2 m + 3 m)) as flat{n} for n from 1 to ").append(flats).append('\n');
    return plan.append("expect neutral of flat1.counter is at most 20 A in flat1.kettle\n").toString();
  }

  String writtenOut() {
    Random random = new Random(seed);
    int flats = 1 + random.nextInt(4);
    int beds = random.nextInt(3);
    StringBuilder plan = new StringBuilder(head());
    plan.append("panel M from main {\n  bus 400 A  slots 40  bonded  main breaker 400 A 22 kA\n");
    for (int n = 1; n <= flats; n++) {
      plan.append("  " + (4 * n - 3) + "+" + (4 * n - 1) + "  60 A two-pole flat" + n + " \"Flat " + n + "\"\n");
    }
    plan.append("}\n");
    for (int n = 1; n <= flats; n++) {
      plan.append(flat(new Hand(false, "flat" + n, "flat", n, n * 2 + 3), beds));
      for (int i = 1; i <= beds; i++) {
        plan.append(bed(new Hand(false, "flat" + n + "-bed" + i, "bed", i, 5), "flat" + n));
      }
    }
    return plan.append("expect neutral of flat1-counter is at most 20 A in flat1-kettle\n").toString();
  }

  /** A text about the plan with patterns, with the names of the one written out. */
  static String named(String text) {
    return text.replaceAll("\\b(flat[0-9]+)\\.(" + LOCAL + ")\\b", "$1-$2");
  }

  private static String head() {
    return """
        plan "Random tower"
        use code us-2023
        let margin = 2 m
        service main 120/240 V 400 A {
          source available 12 kA
          run 10 m of 4/0 Al triplex
          earth rods by 2 Cu
        }
        """;
  }

  private String flat(Hand hand, int beds) {
    Random random = new Random(seed ^ 77);
    StringBuilder text = new StringBuilder();
    text.append("  dwelling ").append(hand.self()).append(" \"Flat ").append(hand.hole()).append("\" on ").append(hand.self())
        .append(" { floor-area 60 m2 }\n");
    text.append("  panel ").append(hand.self()).append(" by ").append(hand.length(0)).append(" of 6/3 NM-B {\n    bus 100 A  slots 20\n");
    boolean shared = random.nextBoolean();
    text.append(shared ? "    1+3  20 A two-pole arc-fault ground-fault " : "    1  20 A arc-fault ground-fault ")
        .append(hand.local("counter")).append('\n');
    text.append("    2  15 A arc-fault ").append(hand.local("lights")).append(" \"Lights of ").append(hand.hole()).append("\"\n");
    for (int i = 1; i <= beds; i++) {
      text.append("    ").append(4 + 2 * i).append("  15 A arc-fault ").append(hand.local("bed" + i)).append('\n');
    }
    text.append("  }\n");
    int outlets = 1 + random.nextInt(3);
    text.append("  room ").append(hand.local("kitchen")).append(" \"Kitchen ").append(hand.hole()).append("\" is kitchen {\n");
    for (int i = 1; i <= outlets; i++) {
      text.append("    c").append(i)
          .append(shared ? ": split receptacle at counter tamper-resistant\n" : ": receptacle at counter tamper-resistant\n");
    }
    text.append("  }\n  branch ").append(hand.local("counter")).append(shared ? " by 12/3 NM-B" : " by 12/2 NM-B")
        .append(" is small-appliance {\n    ").append(hand.self());
    for (int i = 1; i <= outlets; i++) {
      text.append(" --").append(hand.length(i)).append("-- ").append(hand.local("kitchen")).append(".c").append(i);
    }
    text.append("\n  }\n  raceway ").append(hand.local("duct")).append(" by 3/4 in EMT\n");
    text.append("  let ").append(hand.local("reach")).append(" = 4 m + margin\n");
    text.append("  room ").append(hand.local("hall")).append(" is hall {\n    sw: switch for lamp, ").append(hand.self())
        .append(".over\n    lamp: light ").append(5 + random.nextInt(60)).append(" W\n  }\n");
    text.append("  room ").append(hand.self()).append(" is living { over: light 40 W \"Over the table of ").append(hand.hole())
        .append("\" }\n");
    text.append("  branch ").append(hand.local("lights")).append(" by 14/2 NM-B")
        .append(random.nextBoolean() ? " through " + hand.local("duct") : "").append(" {\n    ").append(hand.self());
    text.append(" --(").append(hand.local("reach")).append(")-- ").append(hand.local("hall")).append(".sw --2 m-- ")
        .append(hand.local("hall")).append(".lamp --3 m-- ").append(hand.self()).append(".over\n  }\n");
    text.append("  trial ").append(hand.local("kettle")).append(" { ").append(hand.local("kitchen")).append(shared ? ".c1.upper" : ".c1")
        .append(" draws ").append(4 + random.nextInt(8)).append(" A   open breaker ").append(hand.self()).append("/2 }\n");
    text.append("  expect current of ").append(hand.local("kitchen")).append(shared ? ".c1.upper" : ".c1").append(" is at most 9 A in ")
        .append(hand.local("kettle")).append('\n');
    return text.toString();
  }

  /** The cable of bedrooms. */
  private String cable() {
    return List.of("14/2 NM-B", "12/2 NM-B", "14/3 NM-B", "12/2 UF-B", "12/2/2 NM-B", "14/2 NM-B without ground")
        .get(Math.floorMod(seed, 6));
  }

  /** The kind of the lamp in a bedroom. */
  private String kind() {
    return List.of("light", "recessed light", "ceiling fan", "lihgt").get(Math.floorMod(seed >> 4, 4));
  }

  /** As it is given: one word may stand alone, several stand in quotes. */
  private static String named(String kind, Random random) {
    return kind.indexOf(' ') >= 0 || random.nextBoolean() ? '"' + kind + '"' : kind;
  }

  private String bed(Hand hand, String source) {
    String trait = hand.pattern ? "trait" : "tamper-resistant";
    String lamp = hand.pattern ? "kind" : kind();
    return "  room " + hand.self() + " \"Bedroom " + hand.hole() + "\" is bedroom {\n    sw: switch for lamp\n    lamp: " + lamp
        + " 12 W\n    box b" + hand.hole()
        + " { o" + hand.hole() + ": receptacle " + trait + " }\n  }\n"
        + "  branch " + hand.self() + " \"By " + (hand.pattern ? "{feed}" : cable()) + "\" by " + (hand.pattern ? "feed" : cable())
        + " {\n    " + source + " --" + hand.length(1) + "-- " + hand.self() + ".sw --2 m-- "
        + hand.self() + ".lamp\n    " + hand.self() + ".sw --3 m-- " + hand.self() + ".o" + hand.hole() + "\n  }\n";
  }
}
