package wattle.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import wattle.cli.DocumentFormat.Format;
import wattle.compiler.Compilation;
import wattle.emit.document.lockout.LockoutJson;
import wattle.emit.document.lockout.LockoutPage;
import wattle.emit.document.lockout.LockoutText;
import wattle.emit.document.lockout.SheetHead;
import wattle.finding.NearNames;
import wattle.lockout.Lockout;
import wattle.lockout.Place;
import wattle.lockout.Places;
import wattle.model.House;

/** {@code lockout}: the sheet that somebody takes along before a box is opened. */
@Command(
    name = "lockout",
    description = "Lists which handles to open before work at a place, what stays live nearby, and how to prove it dead.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle lockout examples/alder-court/house.wattle kitchen.c1",
        "  wattle lockout examples/alder-court/house.wattle room kitchen --out kitchen.pdf",
        "  wattle lockout examples/alder-court/house.wattle panel G --format json",
    })
final class LockoutCommand implements Callable<Integer> {
  @Parameters(index = "0", paramLabel = "FILE", description = "The plan, or - for standard input.")
  private String file;

  @Parameters(
      index = "1..*",
      arity = "1..2",
      paramLabel = "PLACE",
      description = "The name of a box, device, room, branch or panel. If several have that name, put the kind first: branch hall.")
  private List<String> place;

  @Mixin
  private DocumentFormat document;

  @Mixin
  private ResultOutput output;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    Format format = document.chosen(output, Format.TEXT, Set.of(Format.TEXT, Format.HTML, Format.JSON, Format.PDF));
    String paper = document.paper();
    Compilation plan = input.compile(file);
    Lockout lockout = plan.figures().lockout(place(plan.house()));
    SheetHead head = SheetHead.of(plan);
    PrintWriter out = spec.commandLine().getOut();
    switch (format) {
      case TEXT -> output.write(LockoutText.render(lockout, head), out);
      case JSON -> output.writeWhole(LockoutJson.render(lockout, head), out);
      default -> DocumentFormat.write(LockoutPage.of(lockout, head, paper), format, output, out);
    }
    lockout.unknown().forEach(u -> spec.commandLine().getErr().println("wattle: not complete: " + u));
    int code = BesideFindings.report(plan, spec);
    return lockout.unknown().isEmpty() ? code : ExitCode.FOUND;
  }

  private Place place(House house) {
    String name = place.get(place.size() - 1);
    if (place.size() == 2 && !Places.KINDS.contains(place.get(0))) {
      throw new Failure("'" + place.get(0) + "' is not a kind of place; device, box, room, branch or panel can be written before the name");
    }
    List<String> kinds = place.size() == 2 ? List.of(place.get(0)) : Places.KINDS;
    List<Place> found = place.size() == 2 ? Places.named(house, place.get(0), name) : Places.named(house, name);
    if (found.isEmpty()) {
      throw new Failure(unknown(house, name, kinds));
    }
    if (found.size() > 1) {
      throw new Failure(
          "'" + name + "' could be " + String.join(" or ", found.stream().map(Place::text).toList()) + "; write one of these");
    }
    return found.get(0);
  }

  private static String unknown(House house, String name, List<String> kinds) {
    Set<String> known = new TreeSet<>();
    kinds.forEach(k -> known.addAll(Places.names(house, k)));
    List<String> near = new ArrayList<>(NearNames.of(name, known));
    known.stream().filter(n -> n.endsWith("." + name) && !near.contains(n)).limit(3).forEach(near::add);
    String kind = kinds.size() == 1 ? kinds.get(0) : "box, device, room, branch or panel";
    return "no " + kind + " is called '" + name + "'"
        + (near.isEmpty() ? "; rooms are " + String.join(", ", house.rooms().keySet()) : "; did you mean " + String.join(", ", near) + "?");
  }
}
