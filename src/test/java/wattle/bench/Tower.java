package wattle.bench;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.Position;

/**
 * A large plan of our own invention: houses of 20 circuits each, one service a house, 225 lines; nothing is found in it that it does not
 * silence, or one error in each room where that is asked for.
 */
final class Tower {
  private static final int CIRCUITS = 20;

  private Tower() {}

  /** The rule by which each room has an error where that is asked for. */
  static final String FAULT = "tamper-resistance-missing";

  static String plan(int houses) {
    return plan(houses, false);
  }

  static String plan(int houses, boolean faulty) {
    StringBuilder plan = new StringBuilder("plan \"Tower\"\nuse code us-2023\n");
    for (int house = 0; house < houses; house++) {
      plan.append("service s%d 120/240 V 100 A { source available 10 kA  outdoor-disconnect   earth rods by 6 Cu }\n".formatted(house));
      plan.append("silence calculated-load-unknown at s%d because \"nobody lives in it\"\n".formatted(house));
      plan.append("panel P%d from s%d {\n".formatted(house, house));
      plan.append("  bus 100 A   slots 24   bonded\n");
      for (int i = 0; i < CIRCUITS; i++) {
        plan.append("  %d   15 A  arc-fault   b%dx%d   \"Circuit %d\"\n".formatted(i + 1, house, i, i));
      }
      plan.append("}\n");
      for (int i = 0; i < CIRCUITS; i++) {
        circuit(plan, house, house + "x" + i, 5 + i, faulty);
      }
    }
    return plan.toString();
  }

  private static void circuit(StringBuilder plan, int house, String name, int meters, boolean faulty) {
    plan.append("branch b%s by 14/2 NM-B {\n".formatted(name));
    plan.append("  P%d --%d m-- r%s.sw --4 m-- r%s.lamp\n".formatted(house, meters, name, name));
    plan.append("  r%s.sw --2.5 m-- r%s.o1 --3 m-- r%s.o2\n}\n".formatted(name, name, name));
    plan.append("room r%s is %s {\n  sw: switch for lamp\n  lamp: light 12 W\n".formatted(name, faulty ? "hall" : "office"));
    plan.append("  o1: receptacle tamper-resistant\n  o2: receptacle%s\n}\n".formatted(faulty ? "" : " tamper-resistant"));
  }

  /** Where a piece of the text stands, each time that it is there. */
  static List<Position> places(String plan, String piece) {
    List<Position> places = new ArrayList<>();
    String[] lines = plan.split("\n");
    for (int line = 0; line < lines.length; line++) {
      int at = lines[line].indexOf(piece);
      if (at >= 0) {
        places.add(new Position(line, at));
      }
    }
    return places;
  }
}
