package wattle.cli;

import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.Compilation;
import wattle.compiler.Primer;
import wattle.compiler.StructurePages;
import wattle.compiler.WordSample;
import wattle.compiler.WrittenRules;
import wattle.compiler.Glossary;
import wattle.emit.document.primer.PrimerPage;
import wattle.emit.document.primer.PrimerText;
import wattle.emit.media.file.Mark;
import wattle.emit.media.text.VisibleWriter;
import wattle.finding.NearNames;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.rules.Rule;
import wattle.rules.RuleLoader;
import wattle.rules.RulePage;

/** {@code explain}: what a rule asks for, why, where it is from, and a plan that keeps and one that breaks it. */
@Command(
    name = "explain",
    description = "Explains a trade term, a rule, a word of the notation, or how a figure of a plan is calculated. Without a name, "
        + "lists the rules.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle explain",
        "  wattle explain box-overfilled",
        "  wattle explain tamper-resistant",
        "  wattle explain shared neutral",
        "  wattle explain drop -o drop.html",
        "  wattle explain --words",
        "  wattle explain --pack ca-2021",
        "  wattle explain my-rule house.wattle",
        "  wattle explain examples/alder-court/house.wattle --figure \"voltage of kitchen.c1\"",
        "  wattle explain examples/alder-court/house.wattle --figure \"ampacity of hall\" --format json",
        "  wattle explain examples/alder-court/house.wattle --figures",
        "  wattle explain examples/alder-court/house.wattle --trial evening --figure \"voltage of kitchen.range\"",
    })
final class ExplainCommand implements Callable<Integer> {
  @Parameters(index = "0", arity = "0..1", paramLabel = "RULE|FILE", completionCandidates = KnownWords.Rules.class,
      description = "A trade term, a word of the notation, or the name of a rule, as findings show it in brackets. With --figure: a "
          + "plan, or - for standard input.")
  private String name;

  @Option(names = "--words", description = "List every word of the notation and the library by kind, with its meaning.")
  private boolean words;

  @Parameters(index = "1", arity = "0..1", paramLabel = "PLAN",
      description = "After the name of your own rule: the plan that uses it.")
  private String plan;

  @Option(names = "--pack", paramLabel = "NAME", completionCandidates = KnownWords.Packs.class,
      description = "List only the rules of this pack.")
  private String pack;

  @Mixin
  private FigureOptions figures;

  @Mixin
  private ResultOutput output;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    if (output.file().isPresent() && (primer().isEmpty() || figures.isGiven())) {
      throw new Failure("--out is for a term of the primer, such as wattle explain neutral -o neutral.html"
          + (name == null ? "" : ", and '" + name + "' is not one of them"));
    }
    if (figures.isGiven()) {
      if (plan != null) {
        throw new Failure("a rule of a plan, or figures of one: give one of the two");
      }
      if (name == null || pack != null) {
        throw new Failure(
            name == null ? "a figure is of a plan: name its file" : "--pack lists rules, and --figure is of a plan; give one of the two");
      }
      return figures.print(name, spec);
    }
    Optional<Primer> primer = primer();
    if (primer.isPresent() && pack == null && !words) {
      return explain(primer.get(), out);
    }
    figures.refuseWithoutFigure();
    if (plan != null) {
      out.print(RulePage.text(besidePlan(), columns(out)));
      return ExitCode.FINE;
    }
    Map<String, Rule> rules = WrittenRules.all();
    if (words) {
      if (name != null || pack != null) {
        throw new Failure("--words lists all words; leave the name and --pack out");
      }
      listWords(out);
      return ExitCode.FINE;
    }
    if (name == null) {
      list(out, rules);
      return ExitCode.FINE;
    }
    Optional<String> structure = StructurePages.of(name);
    List<Glossary.Entry> entries = Glossary.of(library());
    List<Glossary.Entry> meant = meant(entries, name);
    if (rules.containsKey(name)) {
      out.print(RulePage.text(rules.get(name), columns(out)));
    } else if (structure.isPresent()) {
      out.print(structure.get());
    } else if (!meant.isEmpty()) {
      meant.forEach(e -> out.printf("%s (%s)%n%n%s%n%s%n", e.word(), e.kind(), e.meaning(),
          WordSample.of(e).map(w -> System.lineSeparator() + "as in: " + w.text() + System.lineSeparator()).orElse("")));
    } else if (name.endsWith(".wattle")) {
      throw new Failure(name + " is a plan: say which figure of it with --figure, or list them with --figures");
    } else {
      List<String> known = new java.util.ArrayList<>(rules.keySet());
      known.addAll(StructurePages.names());
      entries.forEach(e -> known.add(e.word()));
      Primer.all().forEach(p -> known.addAll(p.terms()));
      List<String> near = NearNames.of(name, known);
      throw new Failure("no rule and no word is called '" + name + "'"
          + (near.isEmpty()
              ? "; wattle explain lists the rules, wattle explain --words the words; a rule of your own: wattle explain RULE PLAN"
              : "; did you mean " + String.join(", ", near) + "?"));
    }
    return ExitCode.FINE;
  }

  /** A term of the primer may have two words, with quotes around them or without. */
  private Optional<Primer> primer() {
    return name == null ? Optional.empty() : Primer.of(plan == null ? name : name + " " + plan);
  }

  private int explain(Primer primer, PrintWriter out) {
    figures.refuseWithoutFigure();
    Compilation lessons = Primer.lessons();
    String ending = output.ending().orElse("txt");
    if (ending.equals("html")) {
      output.write(Mark.markUp(PrimerPage.of(primer, lessons, "letter").html()), out);
    } else if (ending.equals("txt")) {
      output.write(PrimerText.render(primer, lessons), out);
      meant(Glossary.of(library()), output.file().isPresent() ? "" : name).forEach(e -> printWord(e, out));
    } else {
      throw new Failure("a page of the primer is written as .html or .txt");
    }
    return ExitCode.FINE;
  }

  private static List<Glossary.Entry> meant(List<Glossary.Entry> entries, String word) {
    return entries.stream().filter(e -> e.word().equals(word) || e.word().equals(word.replace(' ', '-'))).toList();
  }

  private static void printWord(Glossary.Entry entry, PrintWriter out) {
    out.printf("%n%s (%s)%n%n%s%n%s", entry.word(), entry.kind(), entry.meaning(),
        WordSample.of(entry).map(w -> System.lineSeparator() + "as in: " + w.text() + System.lineSeparator()).orElse(""));
  }

  private static int columns(PrintWriter out) {
    return VisibleWriter.columns(out).orElse(Integer.MAX_VALUE);
  }

  /** All packs together, so that no word of any of them is missing. */
  private static Library library() {
    return StandardLibrary.library(StandardLibrary.packNames());
  }

  private static void listWords(PrintWriter out) {
    String kind = "";
    for (Glossary.Entry entry : Glossary.of(library())) {
      if (!entry.kind().equals(kind)) {
        out.println((kind.isEmpty() ? "" : System.lineSeparator()) + entry.kind());
        kind = entry.kind();
      }
      out.printf("  %-28s %s%n", entry.word(), entry.meaning());
    }
  }

  /** A rule that stands in the files of a plan. */
  private Rule besidePlan() {
    Compilation read = PlanInput.usual().structure(plan);
    return RuleLoader.load(read.library()).value().stream().filter(r -> r.name().equals(name) && read.ownRules().contains(name)).findFirst()
        .orElseThrow(() -> new Failure("the files of " + plan + " have no rule '" + name + "'"
            + (read.ownRules().isEmpty() ? ", and no other of their own" : "; they have " + String.join(", ", read.ownRules()))));
  }

  private void list(PrintWriter out, Map<String, Rule> rules) {
    List<String> packs = StandardLibrary.packNames();
    if (pack != null && !packs.contains(pack)) {
      throw new Failure("no pack is called '" + pack + "'; there are " + String.join(", ", packs));
    }
    for (String each : packs) {
      if (pack == null || pack.equals(each)) {
        out.println(each);
        rules.values().stream().filter(r -> r.pack().equals(each))
            .forEach(r -> out.printf("  %-8s %-38s %s%n", r.severity(), r.name(), r.title()));
        out.println();
      }
    }
    if (pack == null) {
      out.println("structure, whatever the pack");
      StructurePages.all().forEach((each, title) -> out.printf("  %-47s %s%n", each, title));
    }
  }
}
