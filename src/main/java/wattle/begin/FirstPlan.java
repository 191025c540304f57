package wattle.begin;

import java.util.List;
import wattle.words.Caution;

/** The text of a first plan. */
public final class FirstPlan {
  private FirstPlan() {}

  /** A plan that compiles with no error; lengths of runs are left for later, since nothing is known of them. */
  public static String text(Answers answers) {
    Circuits circuits = new Circuits(answers);
    Board board = new Board(circuits.circuits());
    StringBuilder text = new StringBuilder();
    text.append("// A first plan, made from a few answers. Figures of appliances are common ones: put in those of the nameplates.\n");
    text.append("// Lengths are open: write a length such as ").append(inFeet(answers) ? "12 ft" : "4 m")
        .append(" for each later.\n// ").append(Caution.SHORT).append("\n");
    text.append("plan ").append(quoted(answers.title())).append(" revision \"A\"\n");
    if (!answers.code().isEmpty()) {
      text.append("use code ").append(answers.code()).append('\n');
    }
    text.append("use parts common\n\n");
    text.append("dwelling { floor-area ").append(answers.floorArea()).append(" storeys ").append(answers.storeys()).append(" }\n\n");
    supply(text, answers, board);
    text.append("// ---- Circuits\n\n");
    branches(text, circuits.circuits());
    text.append("// ---- Rooms\n\n").append(circuits.rooms().text());
    return text.toString();
  }

  private static boolean inFeet(Answers answers) {
    return answers.floorArea().contains("ft");
  }

  private static void supply(StringBuilder text, Answers answers, Board board) {
    ServiceSize service = answers.service();
    text.append("// Ask the utility for its transformer and add it: source transformer 50 kVA 1.8 %, or source available 10 kA.\n");
    text.append("service main 120/240 V ").append(service.amperes()).append(" A {\n");
    text.append("earth water-pipe by ").append(service.electrode()).append('\n');
    text.append("earth rods by 6 Cu\n}\n\n");
    text.append("// The drop is usually ").append(service.drop()).append("; add it with its length: run ")
        .append(inFeet(answers) ? "65 ft" : "20 m").append(" of ").append(service.drop()).append(".\n");
    text.append("panel P \"Main panel\" from main {\n");
    text.append("bus ").append(service.bus()).append(" A slots ").append(board.slots()).append(" bonded\n");
    text.append("main breaker ").append(service.amperes()).append(" A\n\n");
    board.lines().forEach(line -> text.append(line).append('\n'));
    text.append("}\n\n");
  }

  /** Circuits of one chain take a line each; a fork needs lines of its own, set off by empty ones. */
  private static void branches(StringBuilder text, List<Circuit> circuits) {
    boolean apart = true;
    for (Circuit circuit : circuits) {
      boolean forks = circuit.chains().size() > 1;
      text.append(forks && !apart ? "\n" : "");
      text.append("branch ").append(circuit.name()).append(" by ").append(circuit.cable());
      text.append(circuit.kind().isEmpty() ? "" : " is " + circuit.kind()).append(forks ? " {\n" : " { ");
      text.append("P --later-- ");
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
