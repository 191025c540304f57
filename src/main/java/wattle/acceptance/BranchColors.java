package wattle.acceptance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Wire;

/** The insulated conductors of a branch where it leaves its panel, by their colors. */
final class BranchColors {
  /** One of them: {@code black}, and {@code black (hot A)}. */
  record Conductor(String key, String text) {}

  private BranchColors() {}

  /** Each once; two of one color that do one thing are one line, since they leave by two cables and are joined. */
  static List<Conductor> atPanel(Branch branch) {
    Map<String, Conductor> conductors = new LinkedHashMap<>();
    for (Section section : branch.sections()) {
      if (section.from() != 0) {
        continue;
      }
      if (section.conductors().isEmpty()) {
        section.wiring().insulated().stream().map(Wire::color).forEach(c -> conductors.put(c, new Conductor(c, c)));
      }
      for (ConductorUse use : section.conductors()) {
        if (!(use.role() instanceof Role.Ground)) {
          String role = Role.text(use.role(), branch.hots());
          conductors.put(use.wire().color() + role, new Conductor(use.wire().color(), use.wire().color() + " (" + role + ")"));
        }
      }
    }
    return new ArrayList<>(conductors.values());
  }
}
