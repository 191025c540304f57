import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * Writes a manual page for each command, and shell completion, from the commands themselves. Pages are in the man(7)
 * macros: what picocli's own generator makes would need a converter of sixty megabytes to become a page.
 *
 * <p>Arguments: class of the main command, version, folder to write to.
 */
public final class MakeCommandDocuments {
  /** A value that is the constant of an enumeration, which commands take in small letters; a name such as A4 is none. */
  private static final Pattern CONSTANT = Pattern.compile("\"[A-Z]+(?:_[A-Z]+)*\"");
  private static final String REVISION = "(?m)(^ *'--git'\\)\\R)( *)return";
  private static final String REVISIONS = "$1$2COMPREPLY=( \\$(compgen -W \"HEAD HEAD~1 \\$(git for-each-ref --format='%(refname:short)'"
      + " 2>/dev/null)\" -- \"\\${curr_word}\") )\n$2return";

  private MakeCommandDocuments() {}

  public static void main(String[] arguments) throws Exception {
    Object main = Class.forName(arguments[0]).getDeclaredConstructor().newInstance();
    CommandLine command = new CommandLine(main);
    // Subcommands are listed apart from the annotations of the entry, which describes only the one that is run.
    java.lang.reflect.Field listed = main.getClass().getDeclaredField("COMMANDS");
    listed.setAccessible(true);
    for (Object each : (java.util.List<?>) listed.get(null)) {
      command.addSubcommand(each);
    }
    Path folder = Path.of(arguments[2]);
    String name = command.getCommandName();
    write(folder.resolve("completion/" + name + ".bash"), completion(AutoComplete.bash(name, command)));
    pages(command, name, arguments[1], folder.resolve("man/man1"));
  }

  /**
   * The script as it was made has the values of options in capitals, and where it has no words of its own to offer it keeps
   * the shell from offering files, which is what most commands take. Revisions are those that git knows where one stands.
   */
  private static String completion(String made) {
    String withFiles = made.replaceAll("(?m)^ *type compopt &>/dev/null && compopt \\+o default\\R", "");
    String withRevisions = withFiles.replaceAll(REVISION, REVISIONS);
    return Pattern.compile("_option_args=\\([^)]*\\)").matcher(withRevisions)
        .replaceAll(values -> CONSTANT.matcher(values.group())
            .replaceAll(value -> value.group().toLowerCase(Locale.ROOT).replace('_', '-')));
  }

  private static void write(Path file, String text) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, text.replace("\r\n", "\n"));
  }

  private static void pages(CommandLine command, String name, String version, Path folder) throws IOException {
    write(folder.resolve(name + ".1"), page(command.getCommandSpec(), name, version));
    for (Map.Entry<String, CommandLine> sub : command.getSubcommands().entrySet()) {
      pages(sub.getValue(), name + "-" + sub.getKey(), version, folder);
    }
  }

  private static String page(CommandSpec spec, String name, String version) {
    StringBuilder out = new StringBuilder();
    out.append(".TH \"").append(name.toUpperCase(Locale.ROOT)).append("\" \"1\" \"\" \"Wattle ").append(version).append("\" \"Wattle\"\n");
    List<String> description = List.of(spec.usageMessage().description());
    out.append(".SH NAME\n").append(name).append(" \\- ").append(plain(first(description))).append('\n');
    out.append(".SH SYNOPSIS\n").append(synopsis(spec)).append('\n');
    out.append(".SH DESCRIPTION\n");
    description.forEach(line -> out.append(plain(line)).append('\n'));
    if (!spec.positionalParameters().isEmpty()) {
      out.append(".SH ARGUMENTS\n");
      for (PositionalParamSpec parameter : spec.positionalParameters()) {
        out.append(".TP\n.I ").append(plain(parameter.paramLabel())).append('\n').append(described(parameter)).append('\n');
      }
    }
    List<OptionSpec> options = spec.options().stream().filter(o -> !o.hidden()).toList();
    out.append(options.isEmpty() ? "" : ".SH OPTIONS\n");
    for (OptionSpec option : options) {
      out.append(".TP\n").append(names(option)).append('\n').append(described(option)).append('\n');
    }
    if (!spec.subcommands().isEmpty()) {
      out.append(".SH COMMANDS\n");
      for (Map.Entry<String, CommandLine> sub : spec.subcommands().entrySet()) {
        List<String> of = List.of(sub.getValue().getCommandSpec().usageMessage().description());
        out.append(".TP\n.B ").append(plain(name + "-" + sub.getKey())).append("(1)\n").append(plain(first(of))).append('\n');
      }
    }
    footer(out, List.of(spec.usageMessage().footer()));
    out.append(
        ".SH EXIT STATUS\n0: no error found. 1: errors found, or a difference. 2: bad usage, or a file that cannot be read or written.\n");
    out.append("3: a mistake of the program.\n");
    return out.toString();
  }

  private static String first(List<String> lines) {
    return lines.isEmpty() ? "" : lines.get(0).replaceFirst("\\.$", "");
  }

  private static String synopsis(CommandSpec spec) {
    StringBuilder text = new StringBuilder(".B " + plain(spec.qualifiedName()) + "\n");
    text.append(spec.options().isEmpty() ? "" : "[\\fIOPTION\\fR]... ");
    if (!spec.subcommands().isEmpty()) {
      text.append("\\fICOMMAND\\fR");
    }
    for (PositionalParamSpec parameter : spec.positionalParameters()) {
      boolean many = parameter.arity().max() > 1;
      boolean optional = parameter.arity().min() == 0;
      text.append(optional ? "[" : "").append("\\fI").append(plain(parameter.paramLabel())).append("\\fR");
      text.append(many ? "..." : "").append(optional ? "]" : "").append(' ');
    }
    return text.toString().stripTrailing();
  }

  private static String names(OptionSpec option) {
    List<String> names = new ArrayList<>();
    for (String name : option.names()) {
      names.add("\\fB" + plain(name) + "\\fR" + (option.arity().max() > 0 ? " \\fI" + plain(option.paramLabel()) + "\\fR" : ""));
    }
    return String.join(", ", names);
  }

  /** The description with its variables filled in, as the help has it. */
  private static String described(ArgSpec argument) {
    List<String> words = new ArrayList<>();
    String candidates = argument.completionCandidates() == null ? "" : String.join(", ", argument.completionCandidates());
    for (String line : argument.description()) {
      words.add(
          line.replace("${DEFAULT-VALUE}", String.valueOf(argument.defaultValue())).replace("${COMPLETION-CANDIDATES}", candidates));
    }
    return plain(String.join(" ", words));
  }

  /** The footer of the help: one word and a colon head what follows; indented lines are typed as they stand. */
  private static void footer(StringBuilder out, List<String> lines) {
    boolean literal = false;
    for (String line : lines) {
      boolean indented = line.startsWith("  ");
      if (literal && !indented) {
        out.append(".fi\n");
        literal = false;
      }
      if (line.matches("\\p{L}+:")) {
        out.append(".SH ").append(plain(line.substring(0, line.length() - 1).toUpperCase(Locale.ROOT))).append('\n');
      } else if (indented) {
        out.append(literal ? "" : ".nf\n").append(plain(line.strip())).append('\n');
        literal = true;
      } else if (!line.isBlank()) {
        out.append(".PP\n").append(plain(line)).append('\n');
      }
    }
    out.append(literal ? ".fi\n" : "");
  }

  /** Text as it stands: markup of the help taken off, backslashes, hyphens and leading dots kept from their meaning. */
  private static String plain(String text) {
    String shown = Ansi.OFF.string(text).replace("%n", " ").replace("%%", "%");
    String escaped = shown.replace("\\", "\\e").replace("-", "\\-").replace("\"", "\\(dq");
    return escaped.startsWith(".") || escaped.startsWith("'") ? "\\&" + escaped : escaped;
  }
}
