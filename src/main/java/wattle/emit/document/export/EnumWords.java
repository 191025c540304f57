package wattle.emit.document.export;

import java.util.Locale;

/** Constants as words of the document, such as {@code common-trip}; the schema lists them, and a test holds one against the other. */
final class EnumWords {
  private EnumWords() {}

  static String of(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
