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
 * its files and the pack it extends. The build compiles them to a {@link Snapshot}, which is what plans are made with;
 * their text is read for its trees alone.
 */
public final class StandardLibrary {
  private static final String ROOT = "stdlib/";

  private StandardLibrary() {}

  /** Opened by the first plan of a process and never changed. */
  private static final class Compiled {
    static final Map<String, Snapshot.Pack> PACKS = Snapshot.read(bytes("library.bin"));
    static final Map<List<String>, Library> JOINED = new ConcurrentHashMap<>();
  }

  /**
   * These packs and those they extend as one typed value, base first; a name that is no pack is passed over. Plans of the same
   * packs have the same object.
   */
  public static Library library(List<String> packs) {
    List<String> known = packs.stream().filter(Compiled.PACKS::containsKey).toList();
    return Compiled.JOINED.computeIfAbsent(known, names -> Snapshot.join(Compiled.PACKS, names));
  }

  /** Whether a library is one of {@link #library}: packs that ship, and nothing that a plan adds. */
  public static boolean isShipped(Library library) {
    return Compiled.JOINED.values().stream().anyMatch(joined -> joined == library);
  }

  /**
   * The same read from its text, rules with their titles, reasons and samples: what {@code explain} prints. Everyone else
   * is served by the compiled form, which leaves those out.
   */
  public static Checked<Library> written(List<String> packs) {
    Checked<List<PlanTree>> files = files(packs);
    Checked<Library> library = LibraryLoader.load(files.value());
    List<Finding> findings = new ArrayList<>(files.findings());
    findings.addAll(library.findings());
    return new Checked<>(library.value(), findings);
  }

  /** Names of the packs that ship, in the order listed. */
  public static List<String> packNames() {
    return List.copyOf(Compiled.PACKS.keySet());
  }

  /** The same, read from their text. */
  static List<String> writtenNames() {
    return uses(parse("packs.wattle", new ArrayList<>())).stream()
        .map(path -> path.substring(0, path.indexOf('/')))
        .toList();
  }

  /** The files of a pack, without those of the pack it extends. */
  static Checked<List<PlanTree>> filesOf(String pack) {
    List<Finding> findings = new ArrayList<>();
    PlanTree head = parse(pack + "/pack.wattle", findings);
    List<PlanTree> files = new ArrayList<>(List.of(head));
    uses(head).forEach(path -> files.add(parse(pack + "/" + path, findings)));
    return new Checked<>(files, findings);
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
    if (files.containsKey(ROOT + pack + "/pack.wattle")) {
      return;
    }
    Checked<List<PlanTree>> own = filesOf(pack);
    findings.addAll(own.findings());
    for (Tree.Item item : own.value().get(0).items()) {
      if (item instanceof Tree.Pack declared && declared.base().isPresent()) {
        addPack(declared.base().get().text(), files, findings);
      }
    }
    own.value().forEach(tree -> files.put(tree.source().name(), tree));
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
    return new String(bytes(path), StandardCharsets.UTF_8);
  }

  private static byte[] bytes(String path) {
    try (InputStream in = StandardLibrary.class.getResourceAsStream("/" + ROOT + path)) {
      if (in == null) {
        throw new IllegalStateException("the standard library lacks " + path);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the standard library's " + path, e);
    }
  }
}
