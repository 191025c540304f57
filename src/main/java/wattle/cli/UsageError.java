package wattle.cli;

import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import wattle.emit.media.text.FoldedLines;

/** What is said of a line that cannot be run: what is wrong with it, how it is written, and where the rest stands. */
final class UsageError {
  private UsageError() {}

  /** Prints it; the exit code of wrong usage comes back. */
  static int print(ParameterException problem, PrintWriter err, FoldedLines folded) {
    CommandLine command = problem.getCommandLine();
    err.println("wattle: " + message(problem, command));
    if (problem instanceof UnmatchedArgumentException unmatched) {
      List<String> suggestions = unmatched.getSuggestions();
      if (!suggestions.isEmpty()) {
        err.println("did you mean " + String.join(" or ", suggestions.subList(0, Math.min(3, suggestions.size()))) + "?");
      }
    }
    err.print(folded.ofText(command.getHelp().synopsisHeading() + command.getHelp().synopsis(command.getHelp().synopsisHeadingLength())));
    err.println("More: " + command.getCommandSpec().qualifiedName() + " --help");
    return ExitCode.USAGE;
  }

  private static String message(ParameterException problem, CommandLine command) {
    boolean noCommand = command.getParent() == null && problem instanceof UnmatchedArgumentException unmatched
        && !unmatched.isUnknownOption();
    if (noCommand) {
      return "no command is called '" + ((UnmatchedArgumentException) problem).getUnmatched().get(0) + "'; there are "
          + String.join(", ", command.getSubcommands().keySet());
    }
    return problem.getMessage()
        .replaceFirst("^Invalid value for (?:option|positional parameter) '?([^' ]+)'?(?: \\([^)]*\\))?: ", "$1: ")
        .replaceFirst("is not an? (?:int|long)$", "is not a whole number");
  }
}
