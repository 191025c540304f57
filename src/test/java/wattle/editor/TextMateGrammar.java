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
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.Map;
import org.antlr.v4.runtime.Vocabulary;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.model.Words;
import wattle.syntax.grammar.WattleLexer;

/** The TextMate grammar, made from the lexer's own words, the units of {@code grammar/Wattle.g4} and the words of the library. */
final class TextMateGrammar {
  private static final Set<String> BLOCKS = Set.of(
      "plan", "use", "let", "dwelling", "service", "panel", "main", "branch", "raceway", "room", "box", "trial", "expect",
      "silence", "pattern", "place", "override", "pack", "part", "cable", "table", "limit");
  private static final Set<String> STATUS = Set.of("existing", "new", "to-remove", "later", "spare");
  /** Traits that are words of the grammar; those that are not are in the lists of {@link Words}. */
  private static final Set<String> TRAITS = Set.of(
      "single-pole", "two-pole", "three-pole", "handle-tied", "arc-fault", "ground-fault", "fuse", "pinned", "back-fed",
      "interlocked", "switched-neutral", "type-b", "type-c", "type-d");
  /** Words of the grammar that a slot line may have; any other is the name of what it feeds. */
  private static final List<String> IN_SLOTS = Stream.of(TRAITS, STATUS,
      Set.of("leg", "terminals", "Cu", "Al", "CO-ALR", "for", "from", "to", "ft", "in", "hp")).flatMap(Set::stream).sorted().toList();
  private static final String UNIT_WORD = "[\\p{L}_][\\p{L}_0-9]*";
  private static final String NAME = "[\\p{L}_][\\p{L}_0-9]*(?:-[\\p{L}_0-9]+)*";
  private static final String HOLE = "\\{" + NAME + "\\}";
  private static final String HOLED = NAME + "-?" + HOLE + "(?:-?(?:" + HOLE + "|[\\p{L}_0-9]+))*";
  private static final String NAMED = "(?:" + HOLED + "|" + NAME + "(?!-?" + HOLE + "))";
  private static final String BLANK = "[ \\t\\x{00A0}\\x{FEFF}]";
  private static final String NUMBER = "[0-9]+(?:\\.[0-9]+)?";
  /** A word ends where no letter, digit or inner hyphen goes on. */
  private static final String END = "(?![\\p{L}_0-9²³]|-[\\p{L}_0-9])";
  /** A word of a list that is no name of a device, which has a colon behind it. */
  private static final String NO_NAME = END + "(?!" + BLANK + "*:)";

  private static final ObjectMapper JSON = new ObjectMapper();

  private TextMateGrammar() {}

  /** The text of the file. */
  static String json() {
    ObjectNode root = JSON.createObjectNode();
    root.put("name", "Wattle").put("scopeName", "source.wattle");
    root.putArray("fileTypes").add("wattle");
    root.put("comment", "Made from grammar/Wattle.g4 and stdlib by the tests; -Dgolden=write makes it anew.");
    ArrayNode patterns = root.putArray("patterns");
    texts(patterns);
    ObjectNode slot = patterns.addObject();
    // A line of a panel names what its breaker feeds, which no other line can be told to do.
    slot.put("begin", "^" + BLANK + "*(?=[0-9]+[ab]?(?:\\+[0-9]+[ab]?)*" + BLANK + "+" + NUMBER + BLANK + "*A" + END + ")");
    slot.put("end", "(?=[\\r\\n])|$");
    ArrayNode inSlot = slot.putArray("patterns");
    texts(inSlot);
    add(inSlot, "variable.other", NAMED + "(?=\\.)");
    rest(inSlot, "entity.name.function.branch", IN_SLOTS);
    declarations(patterns);
    words(patterns);
    rest(patterns, "variable.other", literals());
    try {
      return JSON.copy().enable(SerializationFeature.INDENT_OUTPUT).writeValueAsString(root).replace("\r\n", "\n") + "\n";
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void texts(ArrayNode patterns) {
    add(patterns, "variable.other.leg", "(?<=leg |on |[BC]\\+)A" + END);
    add(patterns, "comment.line.double-slash", "//[^\\r\\n]*");
    ObjectNode text = patterns.addObject().put("name", "string.quoted.double.wattle");
    text.put("begin", "\"(?=(?:\\\\[\"\\\\nt]|[^\"\\\\\\r\\n])*\")").put("end", "\"");
    ArrayNode within = text.putArray("patterns");
    add(within, "constant.character.escape", "\\\\[\"\\\\nt]");
    add(within, "variable.parameter.hole", "\\{" + NAME + "(?:\\." + NAME + ")*\\}");
    add(patterns, "invalid.illegal.open-string", "\"(?:\\\\[\"\\\\nt]|[^\"\\\\\\r\\n])*");
  }

  /** Lines that make a thing: the word for it, and its name in the class of its kind. */
  private static void declarations(ArrayNode patterns) {
    captures(patterns, "(for)(" + BLANK + "+)(each)" + BLANK + "+(" + NAME + ")" + BLANK + "+(" + NAME + ")" + END,
        Map.of(1, "keyword.control", 3, "keyword.control", 4, "variable.other", 5, "variable.parameter"));
    Map<String, String> made = new java.util.LinkedHashMap<>();
    made.put("branch", "entity.name.function.branch");
    made.put("room", "entity.name.namespace.room");
    made.put("dwelling", "entity.name.namespace.dwelling");
    made.put("panel", "entity.name.type.class.panel");
    made.put("service", "entity.name.type.interface.service");
    made.put("pattern", "entity.name.type.class.pattern");
    made.put("trial", "entity.name.label.trial");
    made.put("raceway", "variable.other.raceway");
    made.put("let", "variable.other.constant");
    made.put("box", "variable.other.property.box");
    made.put("cable", "entity.name.type.cable");
    made.put("table", "entity.name.type.table");
    made.put("limit", "variable.other.constant");
    made.forEach((word, scope) -> captures(patterns, "^" + BLANK + "*(" + word + ")" + BLANK + "+(" + NAMED + ")" + END,
        Map.of(1, "keyword.declaration", 2, scope)));
    captures(patterns, "^" + BLANK + "*(rule)" + BLANK + "+(" + NAME + ")" + END,
        Map.of(1, "keyword.control", 2, "entity.name.label.rule"));
    captures(patterns, "^" + BLANK + "*(place)" + BLANK + "+(" + NAME + ")" + END,
        Map.of(1, "keyword.declaration", 2, "entity.name.type.class.pattern"));
    captures(patterns, "(as)" + BLANK + "+(" + NAMED + ")" + END, Map.of(1, "keyword.control", 2, "entity.name.namespace.placement"));
    captures(patterns, "(from)" + BLANK + "+(?!memory" + END + ")(" + NAMED + ")" + END, Map.of(1, "keyword.control", 2, "variable.other"));
    captures(patterns, "(" + NAMED + ")" + BLANK + "*(:)" + BLANK + "*(switch)" + END,
        Map.of(1, "variable.other.property.device", 2, "keyword.operator", 3, "support.class.kind"));
    add(patterns, "variable.other.property.device", NAMED + "(?=" + BLANK + "*:)");
    // What a switch works is a name, be it that of a kind.
    captures(patterns,
        "(?<![\\p{L}_0-9-])(for)" + BLANK + "+(?!(?:each|all|new)" + END + ")(" + NAMED + ")" + END + "(?=\\.|" + BLANK
            + "|\\r|\\n|,|\\}|$)",
        Map.of(1, "keyword.control", 2, "variable.other"));
  }

  private static void words(ArrayNode patterns) {
    Library library = StandardLibrary.library(StandardLibrary.packNames());
    Set<String> keywords = new LinkedHashSet<>(literals());
    List<String> kinds = library.parts().keySet().stream().filter(k -> !keywords.contains(k)).toList();
    List<String> ownWords = library.parts().keySet().stream().filter(keywords::contains).toList();
    Map<Boolean, List<String>> units = units().stream().collect(Collectors.partitioningBy(u -> u.matches(UNIT_WORD)));
    add(patterns, "variable.other.property",
        "(?<=\\.)(?!" + any(units.get(false)) + ")(?!" + any(units.get(true)) + END + ")" + NAMED);
    add(patterns, "support.class.kind", any(kinds).replace(" ", BLANK + "+") + NO_NAME);
    add(patterns, "support.class.kind", "(?<=:|: |:  )" + any(ownWords) + NO_NAME);
    List<String> cables = new ArrayList<>(library.cables().keySet());
    cables.addAll(Words.RACEWAYS.known());
    cables.addAll(Words.RACEWAYS.same().keySet());
    add(patterns, "support.type.cable", any(cables) + NO_NAME);
    Set<String> traits = new LinkedHashSet<>(Words.DEVICE_TRAITS.known());
    traits.addAll(Words.BOX_TRAITS.known());
    traits.removeAll(keywords);
    add(patterns, "storage.modifier.trait", any(List.copyOf(traits)) + NO_NAME);
  }

  /**
   * @param name class of what is a name and nothing else
   * @param keywords that can be written here; others are names
   */
  private static void rest(ArrayNode patterns, String name, Collection<String> keywords) {
    List<String> words = keywords.stream().filter(l -> Character.isLetter(l.charAt(0))).toList();
    List<String> signs = literals().stream().filter(l -> !Character.isLetter(l.charAt(0))).toList();
    Set<String> units = units();
    List<String> unitWords = units.stream().filter(u -> u.matches(UNIT_WORD)).toList();
    List<String> unitSigns = units.stream().filter(u -> !unitWords.contains(u)).toList();
    add(patterns, "variable.other.holed", HOLED);
    captures(patterns, "(bundled)" + BLANK + "+(" + NUMBER + ")" + BLANK + "+(in)" + END,
        Map.of(1, "keyword.control", 2, "constant.numeric", 3, "keyword.control"));
    String size = "(?:[0-9]+[ab]|" + NUMBER + ")(?:/(?:[0-9]+[ab]|" + NUMBER + "))*";
    captures(patterns, "(" + size + ")" + BLANK + "*(ft|in|hp)" + END, Map.of(1, "constant.numeric", 2, "keyword.other.unit"));
    add(patterns, "constant.numeric", size);
    add(patterns, "keyword.other.unit", any(unitSigns));
    if (words.stream().anyMatch(BLOCKS::contains)) {
      add(patterns, "keyword.declaration", any(words.stream().filter(BLOCKS::contains).toList()) + END);
    }
    add(patterns, "storage.modifier.trait", any(words.stream().filter(TRAITS::contains).toList()) + END);
    add(patterns, "storage.modifier.status", any(words.stream().filter(STATUS::contains).toList()) + END);
    add(patterns, "keyword.control",
        any(words.stream().filter(w -> !BLOCKS.contains(w) && !TRAITS.contains(w) && !STATUS.contains(w)).toList()) + END);
    add(patterns, "keyword.other.unit", any(unitWords) + END);
    add(patterns, name, NAME);
    add(patterns, "keyword.operator", any(signs));
    add(patterns, "invalid.illegal.stray", "[^ \\t\\x{00A0}\\x{FEFF}\\r\\n]");
  }

  private static void add(ArrayNode patterns, String scope, String match) {
    patterns.addObject().put("name", scope + ".wattle").put("match", match);
  }

  /** A pattern that gives each of its groups a class. */
  private static void captures(ArrayNode patterns, String match, Map<Integer, String> scopes) {
    ObjectNode pattern = patterns.addObject().put("match", match);
    ObjectNode captures = pattern.putObject("captures");
    new java.util.TreeMap<>(scopes).forEach((group, scope) -> captures.putObject(group.toString()).put("name", scope + ".wattle"));
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
