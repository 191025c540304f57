package wattle.compiler;

import java.util.List;
import java.util.LinkedHashMap;
import java.util.Map;
import wattle.library.StandardLibrary;
import wattle.rules.Rule;
import wattle.rules.RuleLoader;

/** The rules of all packs with everything that is written of them: titles, reasons and samples too, which judging needs nothing of. */
public final class WrittenRules {
  private WrittenRules() {}

  /** Rules by name, pack by pack. */
  public static Map<String, Rule> all() {
    Map<String, Rule> rules = new LinkedHashMap<>();
    for (String pack : StandardLibrary.packNames()) {
      RuleLoader.load(StandardLibrary.written(List.of("common", pack)).value()).value().stream()
          .filter(r -> r.pack().equals(pack))
          .forEach(r -> rules.put(r.name(), r));
    }
    return rules;
  }
}
