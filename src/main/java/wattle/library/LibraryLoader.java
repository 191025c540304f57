package wattle.library;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.model.DeviceKind;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/** Library items of any files, of the standard library or beside a plan, to one typed value. */
public final class LibraryLoader {
  private LibraryLoader() {}

  /** Whether an item is part of a library, and not of a plan. */
  public static boolean isOfLibrary(Tree.Item item) {
    return item instanceof Tree.Pack || item instanceof Tree.Part || item instanceof Tree.CableType
        || item instanceof Tree.Table || item instanceof Tree.Limit || item instanceof Tree.Rule;
  }

  /** Everything of a library that stands in these files; items of plans are passed over. */
  public static Checked<Library> load(List<PlanTree> files) {
    return load(files, Library.EMPTY);
  }

  /**
   * The same, of files that may have tables and limits in place of others. What looks one up rests on its columns, or on what its figure
   * measures: one that differs in these is reported and left out, so that the one before it stays in force.
   *
   * @param replaced what the files are added to
   */
  public static Checked<Library> load(List<PlanTree> files, Library replaced) {
    List<Finding> findings = new ArrayList<>();
    PartReader reader = new PartReader(findings::add);
    Map<String, String> packs = new LinkedHashMap<>();
    Map<String, DeviceKind> parts = new LinkedHashMap<>();
    Map<String, CableKind> cables = new LinkedHashMap<>();
    Map<String, Table> tables = new LinkedHashMap<>();
    Map<String, Limit> limits = new LinkedHashMap<>();
    Map<String, RuleText> rules = new LinkedHashMap<>();
    TableReader figures = new TableReader(replaced, findings::add);
    for (PlanTree file : files) {
      for (Tree.Item item : file.items()) {
        if (item instanceof Tree.Pack pack) {
          packs.put(pack.name().text(), pack.label().map(Tree.Text::value).orElse(pack.name().text()));
        } else if (item instanceof Tree.Part part) {
          DeviceKind kind = reader.part(part);
          parts.put(kind.name(), kind);
        } else if (item instanceof Tree.CableType cable) {
          cables.put(cable.name().text(), reader.cable(cable));
        } else if (item instanceof Tree.Table table) {
          figures.table(table).ifPresent(t -> tables.put(t.name(), t));
        } else if (item instanceof Tree.Limit limit) {
          figures.limit(limit).ifPresent(l -> limits.put(l.name(), l));
        } else if (item instanceof Tree.Rule rule) {
          rules.put(rule.name().text(), new RuleText(packOf(file), rule));
        }
      }
    }
    return new Checked<>(new Library(packs, parts, cables, tables, limits, rules), findings);
  }

  /** The folder of a file of the standard library, or the name of a file beside the plan. */
  private static String packOf(PlanTree file) {
    String[] parts = file.source().name().split("/");
    return parts.length > 2 && parts[0].equals("stdlib") ? parts[1] : file.source().name();
  }
}
