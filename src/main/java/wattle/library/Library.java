package wattle.library;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.finding.Citation;
import wattle.model.DeviceKind;

/**
 * All that plans may use, by name, in the order read.
 *
 * @param packs name of each pack that was loaded, and its title
 * @param parts kinds of device, by the words that plans write
 * @param cables types of cable and conductor
 * @param tables published tables, by the name that computations ask for
 * @param limits single figures, likewise
 * @param rules rules by name, not yet checked
 */
public record Library(
    Map<String, String> packs,
    Map<String, DeviceKind> parts,
    Map<String, CableKind> cables,
    Map<String, Table> tables,
    Map<String, Limit> limits,
    Map<String, RuleText> rules) {
  public static final Library EMPTY = new Library(Map.of(), Map.of(), Map.of(), Map.of(), Map.of(), Map.of());

  public Library {
    packs = ordered(packs);
    parts = ordered(parts);
    cables = ordered(cables);
    tables = ordered(tables);
    limits = ordered(limits);
    rules = ordered(rules);
  }

  private static <T> Map<String, T> ordered(Map<String, T> map) {
    // Copying it would make every value of it.
    return map instanceof Lazy ? map : Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  public Optional<CableKind> cable(String name) {
    return Optional.ofNullable(cables.get(name));
  }

  public Optional<DeviceKind> part(String name) {
    return Optional.ofNullable(parts.get(name));
  }

  /** Absent where no pack that the plan uses has it, as where it names no code. */
  public Optional<Table> table(String name) {
    return Optional.ofNullable(tables.get(name));
  }

  public Optional<Limit> limit(String name) {
    return Optional.ofNullable(limits.get(name));
  }

  /**
   * The article of the code in force behind a finding that the common pack or the compiler makes: table {@code rule-articles} of a
   * pack. Absent where no pack names one, and the finding keeps its own source.
   */
  public Optional<Citation> article(String rule) {
    return table("rule-articles").flatMap(
        t -> t.find("article", "article", "article", Key.is("rule", Derivation.stated("rule", "", rule)))
            .map(a -> new Citation(t.citations().get(0).work(), a.value().text(), t.citations().get(0).verify())));
  }

  /** A product standard as the code in force adopts it: table {@code adopted-standards} of a pack; as it is where that has no other. */
  public String adopted(String standard) {
    return table("adopted-standards")
        .flatMap(t -> t.find("adopted", "adopted", "adopted", Key.is("standard", Derivation.stated("standard", "", standard))))
        .map(a -> a.value().text()).orElse(standard);
  }

  /** The terms of the trade that a code has words of its own for, the longer before those that they contain. */
  private static final List<String> TERMS = List.of("an equipment ground", "equipment ground", "ground wire", "GFCI");

  /** A text of the common pack in the terms of the code in force: table {@code terms} of a pack. */
  public String inTerms(String text) {
    String words = text;
    for (String term : table("terms").isPresent() ? TERMS : List.<String>of()) {
      if (words.contains(term)) {
        String own = table("terms").get().find("own", "own", "own", Key.is("term", Derivation.stated("term", "", term)))
            .map(d -> d.value().text()).orElse(term);
        words = words.replace(term, own);
      }
    }
    return words;
  }

  /** What the code in force calls the conductor that a plan writes as {@code ground}: that, or a term of its own. */
  public String groundTerm() {
    String own = inTerms("equipment ground");
    return own.equals("equipment ground") ? "ground" : own;
  }

  /** This library with another laid over it: of two things with one name the other's stands. */
  public Library with(Library other) {
    return new Library(
        Lazy.over(packs, other.packs),
        Lazy.over(parts, other.parts),
        Lazy.over(cables, other.cables),
        Lazy.over(tables, other.tables),
        Lazy.over(limits, other.limits),
        Lazy.over(rules, other.rules));
  }
}
