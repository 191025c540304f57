package wattle.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Source;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * Follows the {@code use} lines of a plan. Files are looked for beside the file that names them and never outside the
 * folder of the plan, links included; packs are looked for in the standard library.
 */
public final class Imports {
  /** Most files of one plan. */
  static final int MOST_FILES = 1000;

  private final SourceReader reader;
  private final Reading reading;
  private final List<Finding> findings = new ArrayList<>();
  private final List<PlanTree> files = new ArrayList<>();
  private final Set<Path> seen = new LinkedHashSet<>();
  private final Set<String> codes = new LinkedHashSet<>();
  private final Set<String> packs = new LinkedHashSet<>(List.of("common"));

  private Imports(SourceReader reader, Reading reading) {
    this.reader = reader;
    this.reading = reading;
  }

  /**
   * A plan with all it uses.
   *
   * @param files the plan first, texts beside it last
   * @param packs names of the packs of the standard library, {@code common} first
   * @param codes those of them that are codes the plan is under
   */
  public record Gathered(List<PlanTree> files, List<String> packs, List<String> codes) {
    public Gathered {
      files = List.copyOf(files);
      packs = List.copyOf(packs);
      codes = List.copyOf(codes);
    }

    /** What all files say, in their order. */
    public List<Tree.Item> items() {
      return files.stream().flatMap(f -> f.items().stream()).toList();
    }
  }

  /**
   * Reads a plan and all that it uses.
   *
   * @param plan the text of the plan
   * @param path where it lies; its folder bounds what may be used
   * @param beside texts that belong to it for this once, such as a trial that was asked for; they may use nothing
   */
  public static Checked<Gathered> gather(Source plan, Path path, SourceReader reader, Reading reading, List<Source> beside) {
    Imports imports = new Imports(reader, reading);
    Path file = path.toAbsolutePath().normalize();
    reading.codeInstead().ifPresent(imports.codes::add);
    reading.codeInstead().ifPresent(imports.packs::add);
    imports.add(plan, file, file.getParent(), List.of(file));
    for (Source more : beside) {
      Checked<PlanTree> parsed = PlanParser.parse(more);
      imports.findings.addAll(parsed.findings());
      imports.files.add(parsed.value());
    }
    Gathered gathered = new Gathered(imports.files, List.copyOf(imports.packs), List.copyOf(imports.codes));
    if (imports.findings.isEmpty() && gathered.items().isEmpty()) {
      imports.findings.add(empty(plan));
    }
    return new Checked<>(gathered, imports.findings);
  }

  private void add(Source source, Path file, Path bounds, List<Path> chain) {
    seen.add(file);
    Checked<PlanTree> parsed = reading.parse(source);
    findings.addAll(parsed.findings());
    files.add(parsed.value());
    for (Tree.Item item : parsed.value().items()) {
      if (item instanceof Tree.Use use) {
        if (use.quoted()) {
          follow(use, source, file, bounds, chain);
        } else {
          pack(use);
        }
      }
    }
  }

  private void pack(Tree.Use use) {
    String name = use.target().text();
    List<String> known = reading.packNames();
    if (!known.contains(name)) {
      Finding.Builder finding = Finding.error(Mistake.PACK_UNKNOWN, "the standard library has no pack '" + name + "'")
          .at(use.target().span(), String.join(", ", known) + " are there")
          .because("A file beside the plan is used by its path in quotes.");
      NearNames.of(name, known).forEach(n -> finding.fix(Fix.safe("write " + n, use.target().span(), n)));
      findings.add(finding.build());
      return;
    }
    boolean code = use.kind().isPresent() && use.kind().get().text().equals("code");
    if (code && reading.codeInstead().isPresent()) {
      return; // another code stands in for it
    }
    packs.add(name);
    if (code) {
      codes.add(name);
    }
  }

  private void follow(Tree.Use use, Source from, Path file, Path bounds, List<Path> chain) {
    Path target;
    try {
      target = file.resolveSibling(use.target().text()).normalize();
    } catch (java.nio.file.InvalidPathException e) {
      findings.add(cannot(use, "'" + use.target().text() + "' is not a file path", "a path such as \"garage.wattle\" is expected here"));
      return;
    }
    if (chain.contains(target)) {
      findings.add(
          Finding.error("use-circle", "files use each other in a loop")
              .at(use.target().span(), "this file is being read already")
              .fix(Fix.takenOut("take out this use line, or the one that leads here", use.span()))
              .build());
      return;
    }
    if (seen.contains(target)) {
      return; // used twice, read once
    }
    if (seen.size() >= MOST_FILES) {
      findings.add(cannot(use, "a plan uses more than " + MOST_FILES + " files", "reading stopped here"));
      return;
    }
    if (Path.of(use.target().text()).isAbsolute() || !staysInside(target, bounds)) {
      findings.add(
          Finding.error("use-outside", "'" + use.target().text() + "' is outside the folder of the plan")
              .at(use.target().span(), "only files in " + bounds.getFileName() + " and below may be used")
              .because("A plan that is handed over must contain everything that it needs, and must not read other files of its reader.")
              .fix("copy the file beside the plan")
              .build());
      return;
    }
    try {
      String shown = shownName(from.name(), use.target().text());
      List<Path> longer = new ArrayList<>(chain);
      longer.add(target);
      Source read = reader.read(target, shown);
      if (characters() + read.text().length() > reader.mostBytes()) {
        findings.add(cannot(use, "a plan and its files have more than " + (reader.mostBytes() >> 20) + " MiB",
            "reading stopped here; --largest-file allows more"));
        return;
      }
      add(read, target, bounds, longer);
    } catch (SourceReader.Unreadable e) {
      findings.add(cannot(use, "a file that the plan uses cannot be read", e.getMessage()));
    }
  }

  /** Of all files that were read. */
  private long characters() {
    return files.stream().mapToLong(f -> f.source().text().length()).sum();
  }

  private static boolean staysInside(Path target, Path bounds) {
    if (!target.startsWith(bounds)) {
      return false;
    }
    try {
      return !Files.exists(target) || target.toRealPath().startsWith(bounds.toRealPath());
    } catch (IOException e) {
      return false; // a link that cannot be followed to its end is not followed at all
    }
  }

  private static String shownName(String from, String target) {
    int slash = from.lastIndexOf('/');
    return slash < 0 ? target : Path.of(from.substring(0, slash + 1) + target).normalize().toString();
  }

  private static Finding cannot(Tree.Use use, String headline, String words) {
    return Finding.error("use-unreadable", headline).at(use.target().span(), words).build();
  }

  private static Finding empty(Source plan) {
    return Finding.error("plan-empty", "nothing is written in " + plan.name() + " but blanks and comments")
        .at(plan.span(0, 0), "a plan is expected here")
        .because("There is nothing to check, so a result without findings would mean nothing.")
        .fix("begin with plan \"…\", or let 'wattle begin' ask a few questions and write a first plan")
        .build();
  }
}
