package wattle.begin;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import wattle.finding.Checked;
import wattle.finding.Source;
import wattle.words.Caution;

/**
 * The first plan of an existing house from its panel schedule. A schedule says neither cables nor boxes, so that each circuit gets one
 * junction, and a cable that is usual for its breaker (NFPA 70-2023 240.4(D) and table 310.16, copper at 60 °C); what was assumed stands in
 * comments.
 *
 * @param text of the plan; empty where there are findings
 * @param told what was assumed or left out, a sentence each
 */
public record PlanOfSchedule(String text, List<String> told) {
  /** Copper by the breaker above it: 14 AWG on 15 A, 12 on 20 A, 10 on 30 A (240.4(D)); 8 on 40 A, 6 on 55 A (table 310.16, 60 °C). */
  private static final TreeMap<Integer, String> SIZES = new TreeMap<>(Map.of(15, "14", 20, "12", 30, "10", 40, "8", 55, "6"));
  private static final Map<String, String> MM2 = Map.of("14", "1.5", "12", "2.5", "10", "6", "8", "10", "6", "16");

  public PlanOfSchedule {
    told = List.copyOf(told);
  }

  /**
   * Of a schedule as CSV.
   *
   * @param main amperes of the service and its main where no row of the schedule has them
   */
  public static Checked<PlanOfSchedule> read(Source csv, String title, String code, SupplyChoice system, int main, boolean fuses) {
    Checked<PanelSchedule> read = ScheduleReader.read(csv, system.legs());
    PanelSchedule schedule = read.value();
    List<String> told = new ArrayList<>(schedule.told());
    if (!read.findings().isEmpty()) {
      return new Checked<>(new PlanOfSchedule("", told), read.findings());
    }
    int amperes = schedule.mainAmperes() > 0 ? schedule.mainAmperes() : main;
    if (schedule.mainAmperes() == 0) {
      told.add("the schedule names no main; " + main + " A is assumed for the main and the service");
    }
    told.add("the supply is assumed to be " + system.word() + " V, the panel to be at the service with neutral and ground bonded in it");
    int highest = schedule.ways().stream().flatMap(w -> w.slots().stream()).max(Integer::compare).orElse(1);
    int slots = system.legs() == 1 ? highest : Board.size(highest);
    told.add("the panel is assumed to have " + slots + " slots, as the highest in the schedule is " + highest);
    String text = new Writing(csv.name(), title, code, system, fuses, told).text(schedule.ways(), amperes, slots);
    return new Checked<>(new PlanOfSchedule(text, told), List.of());
  }

  private record Writing(String from, String title, String code, SupplyChoice system, boolean fuses, List<String> told) {
    String text(List<Way> ways, int amperes, int slots) {
      List<Way> circuits = ways.stream().filter(w -> !w.spare() && cable(w) != null).toList();
      ways.stream().filter(w -> !w.spare() && cable(w) == null)
          .forEach(w -> told.add(
              "what " + w.slotText() + " (" + w.amperes() + " A) feeds is left for later: write its branch, or the panel that it feeds"));
      told.add(
          "each circuit has one junction in a room of its own and the usual copper cable for its breaker. Replace it with what is "
              + "there: until then, a breaker that is too large for its cable cannot be found");
      StringBuilder text = new StringBuilder();
      text.append("// A first plan, made from a panel schedule. Assumed, or left out:\n");
      told.forEach(t -> text.append("// - ").append(oneLine(t)).append('\n'));
      text.append("// ").append(Caution.SHORT).append('\n');
      text.append("plan ").append(FirstPlan.quoted(title)).append(" revision \"A\"\n");
      text.append(code.isEmpty() ? "" : "use code " + code + "\n").append("use parts common\n\n");
      text.append("service main ").append(system.service(amperes)).append(" existing { ")
          .append(system == SupplyChoice.SINGLE_230 ? "frequency 50 Hz " : "").append("}\n\n");
      text.append("panel P \"Main panel\" from main existing {\n");
      text.append("slots ").append(slots).append(" bonded").append(system.legs() == 1 ? " order one-column" : "").append('\n');
      text.append("main ").append(fuses ? "fuse " : "breaker ").append(amperes).append(" A\n\n");
      ways.forEach(w -> text.append(slotLine(w, circuits.contains(w))));
      text.append("}\n\n// ---- Circuits\n\n");
      circuits.forEach(
          w -> text.append("branch ").append(w.name()).append(" by ").append(cable(w)).append(" existing { P --later-- house.")
              .append(w.name())
              .append(" }\n"));
      text.append("\n// ---- Rooms: move each box to the room that it is in\n\nroom house \"Not surveyed yet\" existing {\n");
      circuits.forEach(w -> text.append(w.name()).append(": junction ").append(label(w)).append('\n'));
      return text.append("}\n").toString();
    }

    private String slotLine(Way way, boolean circuit) {
      int poles = way.slots().size();
      String handle = fuses ? "fuse " : poles == 2 ? "two-pole " : poles == 3 ? "three-pole " : "";
      String type = !fuses && system == SupplyChoice.SINGLE_230 ? "type-b " : "";
      return way.slotText() + "  " + way.amperes() + " A  " + handle + type + String.join(" ", way.traits().stream().sorted().toList())
          + "  "
          + (way.spare() ? "spare" : (circuit ? way.name() : "later") + " " + label(way)) + "\n";
    }

    private static String label(Way way) {
      return FirstPlan.quoted(way.description().isEmpty() ? "Circuit " + way.slotText() : way.description());
    }

    /** Null for a breaker so large that it rather feeds a panel. */
    private String cable(Way way) {
      var size = SIZES.ceilingEntry(way.amperes());
      int conductors = Math.max(2, way.slots().size() == 1 ? 2 : 1 + way.slots().size());
      if (size == null || conductors > 3) {
        return null;
      }
      if (system == SupplyChoice.SINGLE_230) {
        return MM2.get(size.getValue()) + " mm2 Cu TPS";
      }
      return size.getValue() + "/" + conductors + " " + (fuses ? "NM without ground" : code.startsWith("ca-") ? "NMD90" : "NM-B");
    }

    private static String oneLine(String text) {
      return text.replaceAll("\\p{Cntrl}+", " ");
    }
  }
}
