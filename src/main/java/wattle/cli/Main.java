package wattle.cli;

import static picocli.CommandLine.Model.UsageMessageSpec.SECTION_KEY_FOOTER;
import static picocli.CommandLine.Model.UsageMessageSpec.SECTION_KEY_SYNOPSIS;
import static picocli.CommandLine.Model.UsageMessageSpec.SECTION_KEY_SYNOPSIS_HEADING;

import java.io.BufferedWriter;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import wattle.emit.media.text.FoldedLines;
import wattle.emit.media.text.VisibleWriter;
import wattle.words.Caution;

/** Entry of the command line. */
@Command(
    name = "wattle",
    description = "Checks, draws and documents house wiring that is written as text.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    synopsisSubcommandLabel = "COMMAND",
    footer = {
        "",
        "Examples:",
        "  wattle check examples/alder-court/house.wattle",
        "",
        Caution.SHORT,
    })
public final class Main implements Runnable {
  /** Every command; its class is called as it is: {@code CheckCommand} is {@code check}. */
  static final List<Class<?>> COMMANDS = List.of(
      CheckCommand.class,
      TidyCommand.class,
      MendCommand.class,
      CompareCommand.class,
      ExplainCommand.class,
      TableCommand.class,
      TrialCommand.class,
      DrawCommand.class,
      ReportCommand.class,
      LockoutCommand.class,
      DirectoryCommand.class,
      TestSheetCommand.class,
      PermitCommand.class,
      LiveCommand.class,
      LanguageServerCommand.class,
      BalanceCommand.class,
      BeginCommand.class,
      SizeCommand.class,
      QuestionsCommand.class,
      ExportCommand.class);

  /** How the version is asked for, alone on the line. */
  private static final List<String> VERSION = List.of("--version", "-V");

  @Option(names = "--trace", description = "Show the trace of an internal error.", scope = CommandLine.ScopeType.INHERIT)
  private boolean trace;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  private final List<VisibleWriter> shown;

  /** For who describes the command and does not run it. */
  public Main() {
    this(List.of());
  }

  private Main(List<VisibleWriter> shown) {
    this.shown = List.copyOf(shown);
  }

  @Option(
      names = {"-w", "--wide"},
      description = "Do not wrap lines and tables at the width of the terminal.",
      scope = CommandLine.ScopeType.INHERIT)
  private void leaveLinesWhole(boolean wanted) {
    if (wanted) {
      shown.forEach(VisibleWriter::leaveLinesWhole);
    }
  }

  /** Runs a command and ends the process with its exit code. */
  public static void main(String[] arguments) {
    System.exit(run(arguments, new FileOutputStream(FileDescriptor.out), new FileOutputStream(FileDescriptor.err)));
  }

  /** Runs a command with the standard streams of a process; what cannot be written is in the exit code that comes back. */
  static int run(String[] arguments, OutputStream standardOutput, OutputStream standardError) {
    StandardStream to = new StandardStream(standardOutput, "standard output");
    StandardStream told = new StandardStream(standardError, "standard error");
    // The console's own encoding may not know Ω or ², and a plan is UTF-8 wherever it goes.
    PrintWriter out = utf8(to, false);
    PrintWriter err = utf8(told, true);
    int code = run(arguments, out, err, Terminal.columns());
    out.flush();
    return told.codeAfter(to.codeAfter(code, err), err);
  }

  private static PrintWriter utf8(StandardStream stream, boolean lineByLine) {
    return new PrintWriter(new BufferedWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8)), lineByLine);
  }

  /** Where no terminal shows the help. */
  private static final int USUAL_HELP_WIDTH = 80;

  /** The library breaks lines behind hyphens and slashes, so it gets room for whole lines, which are broken at blanks afterwards. */
  private static final int UNBROKEN = 1000;

  /** Runs a command with its output going to the given writers; the exit code comes back. */
  public static int run(String[] typed, PrintWriter standardOutput, PrintWriter standardError) {
    return run(typed, standardOutput, standardError, OptionalInt.empty());
  }

  /**
   * The same on a terminal.
   *
   * @param columns that it has; absent where none shows the output
   */
  static int run(String[] typed, PrintWriter standardOutput, PrintWriter standardError, OptionalInt columns) {
    String[] arguments = asOption(typed);
    VisibleWriter out = new VisibleWriter(standardOutput, false, columns);
    VisibleWriter err = new VisibleWriter(standardError, true, columns);
    if (PlainCheck.is(arguments)) {
      return checkPlainly(arguments, out, err);
    }
    if (arguments.length == 1 && VERSION.contains(arguments[0])) {
      // To describe twenty commands takes three times as long as to start.
      List.of(new Version().getVersion()).forEach(out::println);
      out.flush();
      return ExitCode.FINE;
    }
    Main main = new Main(List.of(out, err));
    CommandLine command = new CommandLine(main);
    commands(arguments).forEach(command::addSubcommand);
    command.getSubcommands().values().forEach(c -> c.getCommandSpec().versionProvider(new Version()));
    FoldedLines folded = new FoldedLines(columns.orElse(USUAL_HELP_WIDTH));
    command
        .setOut(out)
        .setErr(err)
        .setParameterExceptionHandler((problem, line) -> UsageError.print(problem, err, folded))
        .setExecutionExceptionHandler((problem, line, parsed) -> main.onException(problem, err));
    EnumerationWord.register(command);
    command.setUsageHelpWidth(UNBROKEN);
    command.setHelpSectionMap(sections(command.getHelpSectionMap(), folded));
    try {
      return command.execute(arguments);
    } catch (OutOfMemoryError e) {
      return tooLittleMemory(err);
    } finally {
      out.flush();
      err.flush();
    }
  }

  private static Map<String, CommandLine.IHelpSectionRenderer> sections(
      Map<String, CommandLine.IHelpSectionRenderer> whole, FoldedLines folded) {
    Map<String, CommandLine.IHelpSectionRenderer> sections = new LinkedHashMap<>();
    whole.forEach((name, section) -> sections.put(name, help -> folded.ofText(section.render(help))));
    CommandLine.IHelpSectionRenderer heading = whole.get(SECTION_KEY_SYNOPSIS_HEADING);
    CommandLine.IHelpSectionRenderer synopsis = whole.get(SECTION_KEY_SYNOPSIS);
    sections.put(SECTION_KEY_SYNOPSIS_HEADING, help -> "");
    sections.put(SECTION_KEY_SYNOPSIS, help -> folded.ofText(heading.render(help) + synopsis.render(help)));
    CommandLine.IHelpSectionRenderer footer = whole.get(SECTION_KEY_FOOTER);
    sections.put(SECTION_KEY_FOOTER, help -> folded.ofCommands(footer.render(help)));
    return sections;
  }

  /** {@code help check} is what many type for {@code check --help}. */
  private static String[] asOption(String[] typed) {
    if (typed.length == 0 || !typed[0].equals("help")) {
      return typed;
    }
    if (typed.length == 1) {
      return new String[]{"--help"};
    }
    boolean known = COMMANDS.stream().anyMatch(c -> nameOf(c).equals(typed[1]));
    return known ? new String[]{typed[1], "--help"} : new String[]{typed[1]};
  }

  private static int checkPlainly(String[] arguments, VisibleWriter out, VisibleWriter err) {
    try {
      return PlainCheck.of(arguments).run(out, err);
    } catch (OutOfMemoryError e) {
      return tooLittleMemory(err);
    } catch (RuntimeException e) {
      return new Main(List.of(out, err)).onException(e, err);
    } finally {
      out.flush();
      err.flush();
    }
  }

  /** The command that the line names, alone: to describe all of them takes longer than most of them run. */
  private static List<Class<?>> commands(String[] arguments) {
    String name = arguments.length == 0 ? "" : arguments[0];
    List<Class<?>> named = COMMANDS.stream().filter(c -> nameOf(c).equals(name)).toList();
    return named.isEmpty() ? COMMANDS : named;
  }

  /** The word for a command, by the name of its class. */
  static String nameOf(Class<?> command) {
    String words = command.getSimpleName().replaceFirst("Command$", "");
    return words.replaceAll("(?<=.)([A-Z])", "-$1").toLowerCase(Locale.ROOT);
  }

  /** Says that memory ran out. What the command held is free again by then; an output is whole or was not written. */
  private static int tooLittleMemory(PrintWriter err) {
    err.println("wattle: out of memory: the result takes more than the " + (Runtime.getRuntime().maxMemory() >> 20)
        + " MiB that Java may use here; split the plan, or allow more, such as with JAVA_TOOL_OPTIONS=-Xmx4g");
    return ExitCode.USAGE;
  }

  private int onException(Exception problem, PrintWriter err) {
    if (problem instanceof Failure) {
      err.println("wattle: " + problem.getMessage());
      return ExitCode.USAGE;
    }
    err.println("wattle: internal error: " + problem + "; please report it with the plan and the command (--trace shows more)");
    if (trace) {
      problem.printStackTrace(err);
    }
    return ExitCode.BUG;
  }

  @Override
  public void run() {
    throw new CommandLine.ParameterException(spec.commandLine(), "which command? See wattle --help");
  }
}
