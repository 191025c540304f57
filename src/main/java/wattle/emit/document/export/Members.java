package wattle.emit.document.export;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import wattle.derivation.Derivation;
import wattle.emit.media.text.Json;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;

/** Members of an object, put where there is something to put: what is not stated and not known has no member. */
final class Members {
  private Members() {}

  static void text(ObjectNode node, String key, Optional<String> text) {
    text.ifPresent(t -> node.put(key, t));
  }

  static void figure(ObjectNode node, String key, Optional<Quantity> figure, Unit unit) {
    figure.ifPresent(f -> node.put(key, f.in(unit)));
  }

  static void derived(ObjectNode node, String key, Optional<Derivation> figure, Unit unit) {
    figure.flatMap(Derivation::quantity).ifPresent(f -> node.put(key, f.in(unit)));
  }

  static void words(ObjectNode node, String key, Collection<String> words) {
    ArrayNode array = node.putArray(key);
    words.forEach(array::add);
  }

  /** Words that have no order of their own. */
  static void set(ObjectNode node, String key, Collection<String> words) {
    words(node, key, new TreeSet<>(words));
  }

  /** Named figures as the plan states them, each in its own unit. */
  static void facts(ObjectNode node, Map<String, Quantity> facts) {
    ObjectNode object = node.putObject("facts");
    new TreeMap<>(facts).forEach((name, fact) -> object.set(name, quantity(fact)));
  }

  static void flags(ObjectNode node, Map<String, Boolean> flags) {
    ObjectNode object = node.putObject("flags");
    new TreeMap<>(flags).forEach(object::put);
  }

  static ObjectNode quantity(Quantity quantity) {
    return Json.object().put("value", quantity.value()).put("unit", quantity.unit().symbol());
  }
}
