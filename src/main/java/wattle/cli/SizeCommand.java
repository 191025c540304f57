package wattle.cli;

import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import wattle.conductors.CircuitSize;
import wattle.emit.sheet.figures.CircuitSizeText;
import wattle.library.CableKind;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.model.Metal;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;

/** {@code size}: conductor, ground, breaker and voltage drop of a circuit without a plan. */
@Command(
    name = "size",
    description = "Sizes one circuit without a plan: breaker, conductor, ground, raceway, voltage drop and longest run, with the "
        + "calculation.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle size 40 A 150 ft 240 V --drop 3 %% --cable NM-B",
        "  wattle size 16 A 45 m 230 V --drop 4 %% --cable THWN-2",
        "  wattle size 48 A 60 ft 240 V --continuous --cable THWN-2",
    })
final class SizeCommand implements Callable<Integer> {
  private static final Pattern AMOUNT = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*([^\\s\\d.]+)");

  @Parameters(
      paramLabel = "AMOUNT", arity = "1..*",
      description = "The load in A, the length of the run one way in ft or m, and the voltage between its two conductors in V.")
  private List<String> amounts;

  @Option(names = "--drop", arity = "1..2", paramLabel = "PERCENT", description = "Largest voltage drop, in %% (default: 3 %%).")
  private List<String> drop = List.of("3", "%");

  @Option(names = "--cable", paramLabel = "TYPE", description = "Type of cable or conductor in the library (default: NM-B).")
  private String cable = "NM-B";

  @Option(names = "--aluminum", description = "Aluminum conductors (default: the metal of the type).")
  private boolean aluminum;

  @Option(names = "--continuous", description = "The load runs three hours or more and is figured at 125 %%.")
  private boolean continuous;

  @Option(names = "--code", paramLabel = "PACK", completionCandidates = KnownWords.Codes.class,
      description = "Code whose tables are used (default: us-2023).")
  private String code = "us-2023";

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    if (!StandardLibrary.packNames().contains(code)) {
      throw new Failure("no code pack is called '" + code + "'; there are " + String.join(", ", StandardLibrary.packNames()));
    }
    Library library = StandardLibrary.library(List.of("common", code));
    CableKind kind = library.cable(cable)
        .orElseThrow(
            () -> new Failure("no cable or conductor type is called '" + cable + "'; wattle begin lists none, stdlib/README.md does"));
    Map<Dimension, Quantity> given = given(String.join(" ", amounts));
    Quantity most = given(String.join(" ", drop) + (drop.get(drop.size() - 1).matches("[\\d.]+") ? " %" : "")).get(Dimension.NONE);
    if (most == null || most.si() <= 0 || most.si() >= 1) {
      throw new ParameterException(spec.commandLine(), "--drop is a percentage above 0 and below 100, such as 3 %");
    }
    CircuitSize.Question question = new CircuitSize.Question(
        needed(given, Dimension.CURRENT, "a load such as 40 A"), continuous, needed(given, Dimension.LENGTH, "a length such as 150 ft"),
        needed(given, Dimension.VOLTAGE, "a voltage such as 240 V"), most, kind, aluminum ? Metal.ALUMINUM : kind.metal());
    Optional<CircuitSize> size = CircuitSize.of(library, question);
    PrintWriter out = spec.commandLine().getOut();
    out.print(CircuitSizeText.of(question, size.orElseThrow(
        () -> new Failure(
            "no listed size carries that over that length: use a higher voltage, a larger drop, or conductors in parallel"))));
    out.flush();
    return ExitCode.FINE;
  }

  private Quantity needed(Map<Dimension, Quantity> given, Dimension dimension, String example) {
    Quantity found = given.get(dimension);
    if (found == null || found.si() <= 0) {
      throw new ParameterException(spec.commandLine(), "size needs " + example);
    }
    return found;
  }

  private Map<Dimension, Quantity> given(String text) {
    Map<Dimension, Quantity> given = new LinkedHashMap<>();
    Matcher matcher = AMOUNT.matcher(text);
    int end = 0;
    while (matcher.find()) {
      Optional<Unit> unit = Units.find(matcher.group(2));
      if (unit.isEmpty() || !text.substring(end, matcher.start()).isBlank()) {
        throw new ParameterException(spec.commandLine(), "'" + text.strip() + "' is not a list of amounts such as 40 A 150 ft 240 V");
      }
      Quantity value = Quantity.of(Double.parseDouble(matcher.group(1)), unit.get());
      if (given.put(value.dimension(), value) != null) {
        throw new ParameterException(spec.commandLine(), "'" + text.strip() + "' gives two amounts in " + unit.get().symbol());
      }
      end = matcher.end();
    }
    if (!text.substring(end).isBlank()) {
      throw new ParameterException(spec.commandLine(), "'" + text.substring(end).strip() + "' has no unit");
    }
    return given;
  }
}
