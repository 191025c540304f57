package wattle.editor;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.antlr.v4.runtime.Vocabulary;
import wattle.syntax.grammar.WattleLexer;

/** The TextMate grammar, made from the lexer's own words and the units of {@code grammar/Wattle.g4}. */
final class TextMateGrammar {
  private static final Set<String> BLOCKS = Set.of(
      "plan", "use", "let", "dwelling", "service", "panel", "main", "branch", "raceway", "room", "box", "trial", "expect",
      "silence", "pattern", "place", "override", "pack", "part", "cable", "table", "limit");
  private static final Set<String> STATUS = Set.of("existing", "new", "to-remove", "later", "spare");
  private static final Set<String> TRAITS = Set.of(
      "single-pole", "two-pole", "three-pole", "handle-tied", "arc-fault", "ground-fault", "fuse", "pinned", "back-fed",
      "interlocked");
  private static final String NAME = "[\\p{L}_][\\p{L}_0-9]*(?:-[\\p{L}_0-9]+)*";
  private static final String HOLE = "\\{" + NAME + "\\}";
  /** A word ends where no letter, digit or inner hyphen goes on. */
  private static final String END = "(?![\\p{L}_0-9]|-[\\p{L}_0-9])";

  private TextMateGrammar() {}

  /** The text of the file. */
  static String json() {
    List<String> words = literals().stream().filter(l -> Character.isLetter(l.charAt(0))).toList();
    List<String> signs = literals().stream().filter(l -> !Character.isLetter(l.charAt(0))).toList();
    Set<String> units = units();
    List<String> unitWords = units.stream().filter(u -> u.matches("[\\p{L}_][\\p{L}_0-9]*")).toList();
    List<String> unitSigns = units.stream().filter(u -> !unitWords.contains(u)).toList();
    ObjectNode root = new ObjectMapper().createObjectNode();
    root.put("name", "Wattle").put("scopeName", "source.wattle");
    root.putArray("fileTypes").add("wattle");
    root.put("comment", "Made from grammar/Wattle.g4 by the tests; -Dgolden=write makes it anew.");
    ArrayNode patterns = root.putArray("patterns");
    add(patterns, "comment.line.double-slash", "//[^\\r\\n]*");
    add(patterns, "string.quoted.double", "\"(?:\\\\[\"\\\\nt]|[^\"\\\\\\r\\n])*\"");
    add(patterns, "invalid.illegal.open-string", "\"(?:\\\\[\"\\\\nt]|[^\"\\\\\\r\\n])*");
    add(patterns, "variable.other.holed", NAME + "-?" + HOLE + "(?:-?(?:" + HOLE + "|[\\p{L}_0-9]+))*");
    add(patterns, "constant.numeric.slot", "[0-9]+[ab]");
    add(patterns, "constant.numeric", "[0-9]+(?:\\.[0-9]+)?");
    add(patterns, "keyword.other.unit", any(unitSigns));
    add(patterns, "keyword.declaration", any(words.stream().filter(BLOCKS::contains).toList()) + END);
    add(patterns, "storage.modifier.trait", any(words.stream().filter(TRAITS::contains).toList()) + END);
    add(patterns, "storage.modifier.status", any(words.stream().filter(STATUS::contains).toList()) + END);
    add(patterns, "keyword.control",
        any(words.stream().filter(w -> !BLOCKS.contains(w) && !TRAITS.contains(w) && !STATUS.contains(w)).toList()) + END);
    add(patterns, "keyword.other.unit", any(unitWords) + END);
    add(patterns, "variable.other", NAME);
    add(patterns, "keyword.operator", any(signs));
    add(patterns, "invalid.illegal.stray", "[^ \\t\\x{00A0}\\x{FEFF}\\r\\n]");
    try {
      return new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT).writeValueAsString(root).replace("\r\n", "\n") + "\n";
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void add(ArrayNode patterns, String scope, String match) {
    patterns.addObject().put("name", scope + ".wattle").put("match", match);
  }

  /** Words and signs that the lexer knows by themselves. */
  private static List<String> literals() {
    Vocabulary vocabulary = WattleLexer.VOCABULARY;
    List<String> literals = new ArrayList<>();
    for (int type = 1; type <= vocabulary.getMaxTokenType(); type++) {
      String literal = vocabulary.getLiteralName(type);
      if (literal != null) {
        literals.add(unescaped(literal.substring(1, literal.length() - 1)));
      }
    }
    return literals;
  }

  private static Set<String> units() {
    try {
      String grammar = Files.readString(Path.of("grammar/Wattle.g4"));
      String rule = grammar.substring(grammar.indexOf("\nUNIT\n"), grammar.indexOf("\nHALF_SLOT"));
      Matcher quoted = Pattern.compile("'([^']+)'").matcher(rule);
      Set<String> units = new LinkedHashSet<>();
      while (quoted.find()) {
        units.add(unescaped(quoted.group(1)));
      }
      return units;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String unescaped(String text) {
    return Pattern.compile("\\\\u([0-9A-Fa-f]{4})").matcher(text).replaceAll(m -> String.valueOf((char) Integer.parseInt(m.group(1), 16)));
  }

  /** Longest first, since the first that fits is taken. */
  private static String any(List<String> texts) {
    return texts.stream()
        .sorted(Comparator.comparingInt(String::length).reversed().thenComparing(Comparator.naturalOrder()))
        .map(t -> t.replaceAll("[.+*(){}\\[\\]|^$?]", "\\\\$0"))
        .collect(Collectors.joining("|", "(?:", ")"));
  }
}
