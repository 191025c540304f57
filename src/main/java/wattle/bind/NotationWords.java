package wattle.bind;

import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import wattle.model.SlotOrder;
import wattle.model.Status;
import wattle.model.Words;
import wattle.syntax.GrammarWords;

/** Every word that binding gives a meaning, by what it is, from the very lists that binding reads by. */
public final class NotationWords {
  /** Kinds of words that are no names of things. */
  public static final String STATEMENT = "statement";

  public static final String OF_A_RULE = "word of a rule";

  public static final String OF_A_LIBRARY = "word of a library";

  private NotationWords() {}

  /** Rules of the grammar by which plans are written, rather than libraries. */
  private static final List<String> PLAN = List.of("heading", "use", "useKind", "let", "dwelling", "service", "serviceItem",
      "serviceStatement", "sourceItem", "earthItem", "panel", "panelItem", "slotItem", "terminals", "terminalMetal", "branch", "branchItem",
      "place", "placeItem", "runLength", "runItem", "wiring", "sets", "cabling", "conductor", "metal", "role", "raceway", "racewayItem",
      "room", "roomItem", "box", "boxItem", "device", "deviceItem", "trial", "drawItem", "expectation", "silence", "pattern", "placing",
      "argument", "repetition", "overriding", "leftOut");

  private static final List<String> RULE = List.of("ruleBlock", "ruleLine", "ruleEdit", "claim", "comparator");
  private static final List<String> LIBRARY = List.of("pack", "part", "cable", "table", "columns", "row", "limit", "citation");

  /** Words by what they are, in the order in which a reader meets them. */
  public static Map<String, List<String>> byKind() {
    Map<String, List<String>> words = new LinkedHashMap<>();
    words.put("fact of a dwelling", facts(Facts.OF_DWELLING));
    words.put("fact of a service", facts(Facts.OF_SERVICE));
    words.put("source of a service", List.copyOf(ServiceBinder.SOURCES));
    words.put("grounding electrode", Words.ELECTRODES.known());
    words.put("fact of a panel", facts(Facts.OF_PANEL));
    words.put("use of a panel", Words.PANEL_USES.known());
    words.put("main of a panel", GrammarWords.of("mainKind"));
    words.put("trait of a transfer switch", Words.TRANSFER_TRAITS.known());
    words.put("order of slots", Arrays.stream(SlotOrder.values()).map(SlotOrder::word).toList());
    words.put("line of a panel", GrammarWords.of("panelSetting"));
    words.put("trait of a breaker", sorted(SlotBinder.TRAITS));
    words.put("use of a branch", Words.BRANCH_USES.known());
    words.put("condition of a run", GrammarWords.of("surroundings"));
    words.put("place of a run", Words.RUN_PLACES.known());
    words.put("raceway", Words.RACEWAYS.known());
    words.put("kind of room", Words.ROOM_KINDS.known());
    words.put("fact of a room", facts(Facts.OF_ROOM));
    words.put("trait of a box", Words.BOX_TRAITS.known());
    words.put("figure of a device", sorted(DeviceBinder.NAMED.keySet()));
    words.put("trait of a device", Words.DEVICE_TRAITS.known());
    words.put("place of a device", Words.DEVICE_PLACES.known());
    words.put("status", Arrays.stream(Status.values()).map(Status::word).toList());
    words.put("event of a trial", GrammarWords.of("event"));
    words.put(STATEMENT, of(PLAN));
    words.put(OF_A_RULE, of(RULE));
    words.put(OF_A_LIBRARY, of(LIBRARY));
    return words;
  }

  /** The words of rules of the grammar; what the statements of a plan and other kinds have is listed there. */
  private static List<String> of(List<String> rules) {
    return rules.stream().flatMap(rule -> GrammarWords.of(rule).stream()).distinct().sorted().toList();
  }

  private static List<String> facts(Facts facts) {
    return Stream.concat(facts.figures().keySet().stream().sorted(), facts.flags().stream().sorted()).toList();
  }

  private static List<String> sorted(Collection<String> words) {
    return List.copyOf(new TreeSet<>(words));
  }
}
