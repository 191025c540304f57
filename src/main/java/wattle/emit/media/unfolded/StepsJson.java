package wattle.emit.media.unfolded;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Locale;
import java.util.Map;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.emit.media.text.Json;

/**
 * The steps of all derivations of a document for programs, each written once: its inputs are named by their places in the array, from 0,
 * and stand before it. Figures of a house share most of their steps, so that a tree under each would be larger by its square.
 */
public final class StepsJson {
  private final ArrayNode steps;
  private final Map<Derivation, Integer> places = new IdentityHashMap<>();
  private final Map<ObjectNode, Integer> alike = new HashMap<>();

  /** @param steps where they are written; empty so far */
  public StepsJson(ArrayNode steps) {
    this.steps = steps;
  }

  /** The place of a derivation, written with all that it rests on where it is not there yet. */
  public int place(Derivation derivation) {
    Integer known = places.get(derivation);
    if (known != null) {
      return known;
    }
    ObjectNode step = step(derivation);
    int place = alike.computeIfAbsent(step, s -> {
      steps.add(s);
      return steps.size() - 1;
    });
    places.put(derivation, place);
    return place;
  }

  private ObjectNode step(Derivation derivation) {
    ObjectNode node = Json.object();
    node.put("name", derivation.name());
    node.put("value", derivation.value().text());
    if (derivation.value() instanceof Value.Amount amount && Double.isFinite(amount.quantity().value())) {
      node.put("number", amount.quantity().value()).put("unit", amount.quantity().unit().symbol());
    }
    node.put("basis", derivation.basis().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    if (!derivation.formula().isEmpty()) {
      node.put("formula", derivation.formula());
    }
    if (!derivation.worked().isEmpty()) {
      node.put("sum", derivation.worked());
    }
    if (!derivation.remark().isEmpty()) {
      node.put("remark", derivation.remark());
    }
    if (!derivation.inputs().isEmpty()) {
      ArrayNode inputs = node.putArray("inputs");
      derivation.inputs().forEach(input -> inputs.add(place(input)));
    }
    if (!derivation.sources().isEmpty()) {
      ArrayNode sources = node.putArray("sources");
      derivation.sources().forEach(source -> sources.add(source.toString()));
    }
    return node;
  }
}
