package wattle.library;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * The packs that ship with the compiler. {@code stdlib/packs.wattle} names them; the {@code pack.wattle} of each names
 * its files and the pack it extends.
 */
public final class StandardLibrary {
  private static final String ROOT = "stdlib/";

  /**
   * What was loaded in this process. The files lie in the jar and never change, so a second plan under the same packs need
   * not have them read again; nothing that is kept here can be changed by anyone.
   */
  private static final Map<List<String>, Checked<Library>> LOADED = new ConcurrentHashMap<>();

  private StandardLibrary() {}

  /** These packs and those they extend as one typed value, base first; a name that is no pack is passed over. */
  public static Checked<Library> library(List<String> packs) {
    return LOADED.computeIfAbsent(List.copyOf(packs), StandardLibrary::load);
  }

  private static Checked<Library> load(List<String> packs) {
    Checked<List<PlanTree>> files = files(packs);
    Checked<Library> library = LibraryLoader.load(files.value());
    List<Finding> findings = new ArrayList<>(files.findings());
    findings.addAll(library.findings());
    return new Checked<>(library.value(), findings);
  }

  /** Names of the packs that ship, in the order listed. */
  public static List<String> packNames() {
    return uses(parse("packs.wattle", new ArrayList<>())).stream()
        .map(path -> path.substring(0, path.indexOf('/')))
        .toList();
  }

  /** All files of these packs and of those they extend, base first; a name that is no pack is passed over. */
  public static Checked<List<PlanTree>> files(List<String> packs) {
    List<Finding> findings = new ArrayList<>();
    Map<String, PlanTree> files = new LinkedHashMap<>();
    List<String> known = packNames();
    packs.stream().filter(known::contains).forEach(pack -> addPack(pack, files, findings));
    return new Checked<>(List.copyOf(files.values()), findings);
  }

  private static void addPack(String pack, Map<String, PlanTree> files, List<Finding> findings) {
    String head = pack + "/pack.wattle";
    if (files.containsKey(head)) {
      return;
    }
    PlanTree tree = parse(head, findings);
    for (Tree.Item item : tree.items()) {
      if (item instanceof Tree.Pack declared && declared.base().isPresent()) {
        addPack(declared.base().get().text(), files, findings);
      }
    }
    files.put(head, tree);
    for (String path : uses(tree)) {
      files.computeIfAbsent(pack + "/" + path, file -> parse(file, findings));
    }
  }

  private static List<String> uses(PlanTree tree) {
    return tree.items().stream()
        .filter(Tree.Use.class::isInstance)
        .map(Tree.Use.class::cast)
        .map(use -> use.target().text())
        .toList();
  }

  private static PlanTree parse(String path, List<Finding> findings) {
    Checked<PlanTree> parsed = PlanParser.parse(new Source(ROOT + path, text(path)));
    findings.addAll(parsed.findings());
    return parsed.value();
  }

  private static String text(String path) {
    try (InputStream in = StandardLibrary.class.getClassLoader().getResourceAsStream(ROOT + path)) {
      if (in == null) {
        throw new IllegalStateException("the standard library lacks " + path);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the standard library's " + path, e);
    }
  }
}
