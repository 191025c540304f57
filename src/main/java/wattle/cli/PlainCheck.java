package wattle.cli;

import java.util.Arrays;
import java.util.List;

/**
 * The command that is run all day, {@code wattle check FILE}, told without the reader of options: to describe a command to
 * that takes longer than to check a house. Any option at all, and the reader is asked.
 */
final class PlainCheck {
  private PlainCheck() {}

  /** Whether a command line is a check of files and says nothing else. */
  static boolean is(String[] arguments) {
    if (arguments.length < 2 || !arguments[0].equals("check")) {
      return false;
    }
    for (int i = 1; i < arguments.length; i++) {
      if (!isFile(arguments[i])) {
        return false;
      }
    }
    return true;
  }

  private static boolean isFile(String argument) {
    // The reader of options takes the arguments from a file that is named with @.
    return argument.equals("-") || !argument.isEmpty() && argument.charAt(0) != '-' && argument.charAt(0) != '@';
  }

  /** The command that such a line asks for. */
  static CheckCommand of(String[] arguments) {
    return CheckCommand.of(List.copyOf(Arrays.asList(arguments).subList(1, arguments.length)));
  }
}
