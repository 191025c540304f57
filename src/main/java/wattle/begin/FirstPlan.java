package wattle.begin;

import java.util.List;
import wattle.words.Caution;

/** The text of a first plan. */
public final class FirstPlan {
  private FirstPlan() {}

  /**
   * A plan that compiles with no error; lengths of runs are left for later, since nothing is known of them. Of several dwellings one is
   * written, as a pattern, and placed as often as there are.
   */
  public static String text(Answers answers) {
    StringBuilder text = new StringBuilder();
    text.append("// A first plan, made from a few answers. Appliance figures are typical: replace them with the nameplate figures.\n");
    if (answers.work().isExisting()) {
      text.append("// Existing work: ratings, cables and rooms are typical; replace them with what is there.\n");
    }
    text.append("// Lengths are open: write a length such as ").append(answers.inFeet() ? "12 ft" : "4 m")
        .append(" for each later.\n// ").append(Caution.SHORT).append("\n");
    text.append("plan ").append(quoted(answers.title())).append(" revision \"A\"\n");
    if (!answers.code().isEmpty()) {
      text.append("use code ").append(answers.code()).append('\n');
    }
    text.append("use parts common\n\n");
    Circuits circuits = Circuits.of(answers);
    if (answers.dwellings() == 1) {
      house(text, answers, circuits);
    } else {
      new SeveralDwellings(answers, circuits).write(text);
    }
    return text.toString();
  }

  private static void house(StringBuilder text, Answers answers, Circuits circuits) {
    text.append("dwelling { ").append(facts(answers)).append(" }\n\n");
    service(text, answers);
    Board board = new Board(circuits.circuits(), answers.system().legs(), answers.wiring().statesLegs());
    text.append("panel P \"Main panel\" from main").append(answers.work().status()).append(" {\n");
    text.append("bus ").append(answers.service().bus()).append(" A slots ").append(board.slots()).append(" bonded")
        .append(board.oneColumn() ? " order one-column" : "").append('\n');
    text.append(main(answers, answers.service())).append("\n\n");
    board.lines().forEach(line -> text.append(line).append('\n'));
    text.append("}\n\n// ---- Circuits\n\n");
    branches(text, answers, circuits.circuits(), "P");
    text.append("// ---- Rooms\n\n").append(circuits.rooms().text(""));
  }

  static String facts(Answers answers) {
    return "floor-area " + answers.floorArea() + " storeys " + answers.storeys();
  }

  /** What opens a panel. */
  static String main(Answers answers, ServiceSize size) {
    return "main " + (answers.work() == Work.FUSES ? "fuse " : "breaker ") + size.amperes() + " A";
  }

  static void service(StringBuilder text, Answers answers) {
    ServiceSize service = answers.service();
    SupplyChoice system = answers.system();
    text.append("// Ask the utility for its transformer and add it: source transformer 50 kVA 1.8 %, or source available 10 kA.\n");
    text.append("service main ").append(system.service(service.amperes())).append(answers.work().status()).append(" {\n");
    if (system == SupplyChoice.SINGLE_230) {
      text.append("frequency 50 Hz\n");
    } else if (!answers.wiring().canadian()) {
      text.append("earth water-pipe by ").append(service.electrode(system)).append('\n');
    }
    text.append("earth rods by ").append(system == SupplyChoice.SINGLE_230 ? service.electrode(system) : "6 Cu").append("\n}\n\n");
    text.append("// Its conductors are usually ").append(service.run(answers)).append("; add them with their length: run ")
        .append(answers.inFeet() ? "65 ft" : "20 m").append(" of ").append(service.run(answers)).append(".\n");
  }

  /** Circuits of one chain take a line each; a fork needs lines of its own, set off by empty ones. */
  static void branches(StringBuilder text, Answers answers, List<Circuit> circuits, String panel) {
    boolean apart = true;
    for (Circuit circuit : circuits) {
      boolean forks = circuit.chains().size() > 1;
      text.append(forks && !apart ? "\n" : "");
      text.append("branch ").append(circuit.name()).append(" by ").append(circuit.cable());
      text.append(circuit.kind().isEmpty() ? "" : " is " + circuit.kind()).append(answers.work().status()).append(forks ? " {\n" : " { ");
      text.append(panel).append(" --later-- ");
      for (List<String> chain : circuit.chains()) {
        text.append(String.join(" --later-- ", chain)).append(forks ? "\n" : " ");
      }
      text.append(forks ? "}\n\n" : "}\n");
      apart = forks;
    }
    text.append(apart ? "" : "\n");
  }

  /** A title as the notation quotes it; line ends become spaces. */
  static String quoted(String title) {
    return '"' + title.replaceAll("\\p{Cntrl}+", " ").replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
