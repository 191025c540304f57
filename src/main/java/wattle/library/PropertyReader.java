package wattle.library;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import wattle.evaluate.Evaluator;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** The properties of one library block, each of which may be asked for once; what is never asked for is a finding. */
final class PropertyReader {
  /** Names that a library may still have from an earlier spelling of the notation, which are read as those of today. */
  private static final Map<String, String> EARLIER = Map.of("behaviour", "behavior", "colours", "colors");

  private final Map<String, Tree.Property> properties = new LinkedHashMap<>();
  private final List<String> asked = new ArrayList<>();
  private final Consumer<Finding> findings;
  private final Evaluator evaluator;

  PropertyReader(List<Tree.Property> written, Consumer<Finding> findings) {
    this.findings = findings;
    this.evaluator = new Evaluator(Map.of(), findings);
    for (Tree.Property property : written) {
      if (properties.putIfAbsent(EARLIER.getOrDefault(property.name().text(), property.name().text()), property) != null) {
        findings.accept(
            Finding.error("property-twice", "'" + property.name() + "' is stated twice")
                .at(property.name().span(), "stated before")
                .build());
      }
    }
  }

  boolean has(String name) {
    return ask(name).isPresent();
  }

  /** A property that stands alone. */
  boolean flag(String name) {
    Optional<Tree.Property> flag = ask(name);
    flag.filter(p -> !p.values().isEmpty())
        .ifPresent(p -> refuse(p.span(), "'" + name + "' is so by its name alone", "nothing more can be written here"));
    return flag.isPresent();
  }

  /** The words of a property; empty where it is not stated. */
  List<String> words(String name) {
    return ask(name)
        .map(p -> withoutFigures(p).values().stream().flatMap(v -> v.word().stream()).map(Tree.Word::text).toList())
        .orElse(List.of());
  }

  /** Words alone are used of such a property; a figure among them would say nothing. */
  private Tree.Property withoutFigures(Tree.Property property) {
    property.values().stream().flatMap(v -> v.amount().stream()).findFirst().ifPresent(
        figure -> refuse(figure.span(), "'" + property.name() + "' takes words and no figure", "a word is expected here"));
    return property;
  }

  private void refuse(Span span, String headline, String expected) {
    findings.accept(Finding.error("property-value", headline).at(span, expected).fix(Fix.takenOut("take it out", span)).build());
  }

  /** The one word of a property that has room for one. */
  Optional<String> word(String name) {
    List<String> words = words(name);
    if (words.size() > 1) {
      refuse(properties.get(name).span(), "'" + name + "' has " + words.size() + " words", "one word is expected here");
    }
    return words.stream().findFirst();
  }

  /** One of a closed set of words, or the one that stands where none is stated. */
  String oneOf(String name, List<String> allowed, String otherwise) {
    Optional<Tree.Property> property = ask(name);
    if (property.isEmpty()) {
      return otherwise;
    }
    String found = word(name).orElse("");
    if (!allowed.contains(found)) {
      Span span = property.get().span();
      Finding.Builder finding = Finding.error("property-value", "'" + name + "' cannot be '" + found + "'")
          .at(span, String.join(", ", allowed) + " are expected here");
      Optional<Span> word = property.get().values().stream().flatMap(v -> v.word().stream()).map(Tree.Word::span).findFirst();
      NearNames.of(found, allowed).forEach(
          n -> finding.fix(word.map(w -> Fix.offered("write " + n, w, n)).orElseGet(() -> Fix.of("write " + name + " " + n))));
      findings.accept(finding.build());
      return otherwise;
    }
    return found;
  }

  Optional<Quantity> quantity(String name, Dimension dimension) {
    return ask(name)
        .flatMap(
            p -> {
              Optional<Tree.Expression> amount = p.values().stream().flatMap(v -> v.amount().stream()).findFirst();
              if (p.values().size() > 1) {
                refuse(p.span(), "'" + name + "' has more than a figure", dimension.trade() + " alone is expected here");
              }
              if (amount.isEmpty()) {
                findings.accept(
                    Finding.error("property-value", "'" + name + "' has no figure")
                        .at(p.span(), dimension.trade() + " is expected here")
                        .build());
              }
              return amount.flatMap(a -> evaluator.valueOf(a, dimension, "'" + name + "'"));
            });
  }

  int count(String name, int otherwise) {
    return quantity(name, Dimension.NONE).map(q -> (int) q.si()).orElse(otherwise);
  }

  /** All figures of a property as written, such as wire sizes. */
  List<String> figures(String name) {
    return ask(name)
        .map(p -> p.values().stream().flatMap(v -> v.amount().stream()).map(a -> a.span().text()).toList())
        .orElse(List.of());
  }

  /** To be called last: tells of properties that mean nothing here. */
  void finish() {
    for (Tree.Property property : properties.values()) {
      String name = property.name().text();
      if (!asked.contains(name)) {
        Finding.Builder finding = Finding.error("property-unknown", "no property is called '" + name + "' here")
            .at(property.name().span(), "means nothing here");
        NearNames.of(name, asked).forEach(n -> finding.fix(Fix.safe("write " + n, property.name().span(), n)));
        findings.accept(finding.build());
      }
    }
  }

  private Optional<Tree.Property> ask(String name) {
    asked.add(name);
    return Optional.ofNullable(properties.get(name));
  }
}
