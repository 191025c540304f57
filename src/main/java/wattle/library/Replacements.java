package wattle.library;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Mistake;
import wattle.syntax.Tree;

/**
 * What a plan has instead of tables and limits of its packs. What looks one up rests on its columns, or on what its figure measures: a
 * replacement that differs in these is told and left out, and that of the pack stays in force.
 */
public final class Replacements {
  private static final String STAYS = "That of the pack is used.";

  private Replacements() {}

  /**
   * The plan's own part of the library without what cannot stand for what it replaces.
   *
   * @param own what the items of the plan add
   * @param packs what they add it to
   */
  public static Checked<Library> fitting(Library own, Library packs, List<Tree.Item> items) {
    List<Finding> findings = new ArrayList<>();
    Map<String, Table> tables = new LinkedHashMap<>(own.tables());
    Map<String, Limit> limits = new LinkedHashMap<>(own.limits());
    for (Tree.Item item : items) {
      if (item instanceof Tree.Limit written) {
        String name = written.name().text();
        if (limits.containsKey(name) && packs.limit(name).isPresent() && !isAlike(limits.get(name), packs.limits().get(name))) {
          findings.add(mismatch(limits.remove(name), packs.limits().get(name), written));
        }
      } else if (item instanceof Tree.Table written) {
        String name = written.name().text();
        if (tables.containsKey(name) && packs.table(name).isPresent()
            && !TableShape.hasColumnsOf(packs.tables().get(name), tables.get(name), written, findings::add)) {
          tables.remove(name);
        }
      }
    }
    boolean all = tables.size() == own.tables().size() && limits.size() == own.limits().size();
    return new Checked<>(all ? own : new Library(own.packs(), own.parts(), own.cables(), tables, limits, own.rules()), findings);
  }

  private static boolean isAlike(Limit limit, Limit replaced) {
    return limit.value().dimension().equals(replaced.value().dimension());
  }

  private static Finding mismatch(Limit limit, Limit replaced, Tree.Limit written) {
    return Finding.error(Mistake.DIMENSION_MISMATCH, "limit '" + limit.name() + "' cannot be " + limit.value())
        .at(written.value().span(), replaced.value().dimension().trade() + " is expected here").because(STAYS).build();
  }
}
