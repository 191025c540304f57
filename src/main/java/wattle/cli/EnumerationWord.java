package wattle.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.TypeConversionException;
import wattle.finding.NearNames;

/** Values of an option that has a few, as they are typed: {@code one-line} for {@code ONE_LINE}, in whatever case. */
final class EnumerationWord<E extends Enum<E>> implements ITypeConverter<E> {
  private final Class<E> type;

  private EnumerationWord(Class<E> type) {
    this.type = type;
  }

  /** Makes every option of a command and of its subcommands take its words so. */
  static void register(CommandLine command) {
    for (ArgSpec argument : command.getCommandSpec().args()) {
      if (argument.type().isEnum()) {
        register(command, argument.type());
      }
    }
    command.getSubcommands().values().forEach(EnumerationWord::register);
  }

  @SuppressWarnings({"unchecked", "rawtypes"})
  private static void register(CommandLine command, Class<?> type) {
    command.registerConverter((Class) type, new EnumerationWord(type));
  }

  /** The word for a value. */
  static String of(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  @Override
  public E convert(String typed) {
    String word = typed.strip().toLowerCase(Locale.ROOT).replace('_', '-');
    List<String> words = Arrays.stream(type.getEnumConstants()).map(EnumerationWord::of).toList();
    int at = words.indexOf(word);
    if (at >= 0) {
      return type.getEnumConstants()[at];
    }
    List<String> near = NearNames.of(word, words);
    throw new TypeConversionException(
        "'" + typed + "' is none of " + String.join(", ", words)
            + (near.isEmpty() ? "" : "; did you mean " + String.join(" or ", near) + "?"));
  }
}
