package wattle.begin;

/**
 * Several dwellings behind one service: a switchboard with a way for each and one for the stairs, and a pattern of the dwelling. On a
 * three-phase service dwellings take two hots in turn, A and B, C and A, B and C, so that the three carry about the same.
 */
final class SeveralDwellings {
  /** So many ways of two slots stand in one column of the switchboard; a multiple of three, so that the next one starts on leg A again. */
  private static final int MOST_IN_A_COLUMN = 21;
  private static final int SLOTS_OF_A_WAY = 4;
  private static final int INDENT = 2;

  private final Answers answers;
  private final Circuits circuits;
  private final String name;
  private final String title;

  SeveralDwellings(Answers answers, Circuits circuits) {
    this.answers = answers;
    this.circuits = circuits;
    this.name = answers.isBlock() ? "flat" : "unit";
    this.title = answers.isBlock() ? "Flat" : "Unit";
  }

  void write(StringBuilder text) {
    FirstPlan.service(text, answers);
    ServiceSize feeder = feeder();
    switchboard(text, feeder);
    stairs(text);
    text.append("// ---- One of ").append(answers.dwellings()).append(" identical dwellings: for one that differs, write an override "
        + "with its name\n\n");
    text.append("pattern ").append(name).append("(n) {\n").append(dwelling(feeder).indent(INDENT)).append("}\n\n");
    text.append("place ").append(name).append("(n) as ").append(name).append("{n} for n from 1 to ").append(answers.dwellings())
        .append('\n');
  }

  /** What the pattern holds; a statement at the edge of the page would end it. */
  private String dwelling(ServiceSize feeder) {
    StringBuilder text = new StringBuilder();
    text.append("dwelling ").append(name).append(" \"").append(title).append(" {n}\" on ").append(name).append(" { ")
        .append(FirstPlan.facts(answers)).append(" }\n\n");
    Board board = new Board(circuits.circuits(), answers.system().legsOfEach(), answers.wiring().statesLegs());
    text.append("panel ").append(name).append(" \"").append(title).append(" {n}\" by ").append(feeder.feeder(answers.wiring()))
        .append(answers.work().status()).append(" {\nbus ").append(feeder.bus()).append(" A slots ").append(board.slots())
        .append(board.oneColumn() ? " order one-column" : "").append('\n').append(FirstPlan.main(answers, feeder)).append("\n\n");
    board.lines().forEach(line -> text.append(line).append('\n'));
    text.append("}\n\n");
    FirstPlan.branches(text, answers, circuits.circuits(), name);
    return text.append(circuits.rooms().text(" of " + name + " {n}").stripTrailing()).toString();
  }

  /** A dwelling has 100 A at the least and 60 A in old work, as services have; on 230 V 60 A or 100 A, common practice. */
  private ServiceSize feeder() {
    ServiceSize needed = ServiceSize.ofDwelling(DwellingLoad.amperes(answers, circuits.circuits()));
    if (answers.system() == SupplyChoice.SINGLE_230) {
      return needed == ServiceSize.A60 ? needed : ServiceSize.A100;
    }
    ServiceSize least = ServiceSize.of(answers.system(), 1, answers.work()).get(0);
    return needed.amperes() < least.amperes() ? least : needed;
  }

  private void switchboard(StringBuilder text, ServiceSize feeder) {
    int dwellings = answers.dwellings();
    int first = Math.min(dwellings, MOST_IN_A_COLUMN);
    boolean one = answers.system() == SupplyChoice.SINGLE_230;
    text.append("panel M \"Main switchboard\" from main").append(answers.work().status()).append(" {\n");
    int stairs = one ? dwellings + 1 : first == dwellings ? 2 : SLOTS_OF_A_WAY * (dwellings - first) + 2;
    int slots = Board.size(one ? stairs : Math.max(stairs, SLOTS_OF_A_WAY * first));
    text.append("bus ").append(answers.service().bus()).append(" A slots ").append(slots).append(" bonded meters")
        .append(one ? " order one-column" : "").append('\n').append(FirstPlan.main(answers, answers.service())).append("\n\n");
    String way = "  " + feeder.amperes() + " A  " + (answers.work() == Work.FUSES ? "fuse" : answers.system().poles()) + "  " + name
        + "{n}  \"" + title + " {n}\" for n from ";
    if (one) {
      text.append("(n)").append(way).append("1 to ").append(dwellings).append('\n');
    } else {
      text.append("(4 * n - 3)+(4 * n - 1)").append(way).append("1 to ").append(first).append('\n');
      if (first < dwellings) {
        text.append("(4 * (n - ").append(first).append(") - 2)+(4 * (n - ").append(first).append("))").append(way).append(first + 1)
            .append(" to ").append(dwellings).append('\n');
      }
    }
    Wiring wiring = answers.wiring();
    text.append(stairs).append("  ").append(wiring.amperes(15)).append(" A  ")
        .append(String.join(" ", wiring.protections(java.util.List.of()))).append("  stairs  \"Stairs and entrance\"\n}\n\n");
  }

  private void stairs(StringBuilder text) {
    Wiring wiring = answers.wiring();
    Rooms common = new Rooms(wiring);
    common.add("stair", "Stairs", "");
    common.light("stair", 60);
    String status = answers.work().status();
    text.append("branch stairs by ").append(wiring.inside("14/2")).append(status)
        .append(" { M --later-- stair.sw --later-- stair.lamp }\n\n").append(common.text(""));
  }
}
