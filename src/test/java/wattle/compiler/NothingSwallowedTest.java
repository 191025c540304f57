package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import wattle.read.SourceReader;
import wattle.finding.Mark;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.golden.Golden;
import wattle.model.Doubt;
import wattle.model.Doubts;
import wattle.model.House;
import wattle.syntax.Lexeme;
import wattle.syntax.LexemeReader;
import wattle.syntax.Tree;

/**
 * Every word and figure of a plan is used or refused: where one is taken out, or another stands in its place, the house or a finding is
 * another. A word that means nothing is refused wherever it does not name a thing of the plan.
 *
 * <p>{@code -Dwattle.every-word=true} tries every word of every example. A usual run tries each {@value #EACH}th word, beginning with
 * one that {@code -Dwattle.word-seed} says, so that {@value #EACH} runs with seeds one apart try all of them.
 */
class NothingSwallowedTest {
  private static final boolean ALL = Boolean.getBoolean("wattle.every-word");
  private static final int EACH = 12;
  private static final int SEED = Integer.getInteger("wattle.word-seed", 7);

  /** Words that say what is so without them too, each behind the word before it, with the reason. */
  private static final Map<String, String> REDUNDANT = Map.of(
      "use parts", "a pack is found by its name; the word says to people that it is one of parts",
      "A spare", "a way that feeds nothing is a spare",
      "dwelling flat", "the dwelling of a placement goes by the name of the pattern where it has none",
      "dwelling unit", "the same of another pattern");
  private static final String NONSENSE = "rhubarb";

  @TestFactory
  Stream<DynamicTest> everyWordIsUsedOrRefused() {
    return Golden.plans("examples").stream()
        .map(file -> DynamicTest.dynamicTest(file.toString(), () -> assertThat(swallowed(file)).isEmpty()));
  }

  private static List<String> swallowed(Path file) {
    String text = read(file);
    Said said = said(text, file);
    List<Lexeme> words = LexemeReader.read(new Source(file.toString(), text)).value().stream()
        .filter(l -> l.kind() != Lexeme.Kind.LINE_END && l.kind() != Lexeme.Kind.COMMENT)
        .filter(l -> said.leftOut.stream().noneMatch(s -> s.start() <= l.span().start() && l.span().end() <= s.end()))
        .toList();
    return sample(words).parallel()
        .flatMap(word -> Stream.concat(deleted(word, text, file, said), changed(word, text, file, said)))
        .sorted()
        .toList();
  }

  private static Stream<Lexeme> sample(List<Lexeme> words) {
    return ALL ? words.stream() : IntStream.range(0, words.size()).filter(i -> i % EACH == SEED % EACH).mapToObj(words::get);
  }

  private static Stream<String> deleted(Lexeme word, String text, Path file, Said said) {
    String before = text.substring(0, word.span().start()).stripTrailing();
    if (REDUNDANT.containsKey(before.substring(before.replaceFirst("\\S+$", "").length()) + " " + word.text())) {
      return Stream.of();
    }
    return said(with(text, word.span(), ""), file).equals(said)
        ? Stream.of(place(word) + " is taken out and nothing is another")
        : Stream.of();
  }

  private static Stream<String> changed(Lexeme word, String text, Path file, Said said) {
    Optional<String> other = other(word);
    if (other.isEmpty()) {
      return Stream.of();
    }
    Said now = said(with(text, word.span(), other.get()), file);
    if (now.equals(said)) {
      return Stream.of(place(word) + " becomes " + other.get() + " and nothing is another");
    }
    boolean named = word.kind() != Lexeme.Kind.NAME || said.names.contains(word.text());
    boolean refused = named || !said.findings.containsAll(now.findings) || judged(with(text, word.span(), other.get()), file);
    return !refused
        ? Stream.of(place(word) + " becomes " + other.get() + " and is not refused")
        : Stream.of();
  }

  /** Whether a phase after binding refuses a plan that binding finds sound, as it does a measure that there is not. */
  private static boolean judged(String text, Path file) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source(file.toString(), text), file).findings().stream()
        .anyMatch(f -> f.headline().contains(NONSENSE));
  }

  private static Optional<String> other(Lexeme word) {
    return switch (word.kind()) {
      case NAME -> Optional.of(NONSENSE);
      case NUMBER -> Optional.of(word.text().contains(".") ? word.text() + "7" : word.text() + "1");
      case TEXT -> Optional.of("\"" + NONSENSE + "\"");
      default -> Optional.empty();
    };
  }

  private static String with(String text, Span span, String other) {
    // A space on both sides, so that what stands beside it stays a word of its own where it was one.
    return text.substring(0, span.start()) + other + text.substring(span.end());
  }

  private static String place(Lexeme word) {
    return word.span().source().name() + ":" + word.span().source().text().substring(0, word.span().start()).lines().count() + " '"
        + word.text() + "'";
  }

  /**
   * What there is of a plan but for where it is written.
   *
   * @param leftOut statements of which something was left out for a mistake in them or in what they lead to, which a finding says, so that
   *     their words need not say anything
   */
  private record Said(String house, List<String> findings, Set<String> names, List<Span> leftOut) {
    @Override
    public boolean equals(Object other) {
      return other instanceof Said said && said.house.equals(house) && said.findings.equals(findings);
    }

    @Override
    public int hashCode() {
      return house.hashCode();
    }
  }

  private static Said said(String text, Path file) {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).structure(new Source(file.toString(), text), file, List.of());
    StringBuilder house = new StringBuilder();
    write(plan.house(), house);
    write(List.copyOf(plan.library().parts().keySet()), house);
    write(List.copyOf(plan.library().rules().keySet()), house);
    write(plan.items().stream().filter(Tree.Placing.class::isInstance).map(Object::toString).toList(), house);
    List<String> findings = plan.findings().stream().map(f -> f.rule() + " " + f.headline()).toList();
    return new Said(house.toString(), findings, names(plan), leftOut(plan));
  }

  private static List<Span> leftOut(Compilation plan) {
    Source source = plan.source();
    List<Span> faults = plan.findings().stream().filter(f -> f.severity() == Severity.ERROR)
        .flatMap(f -> f.everywhere().stream()).map(Mark::span).filter(s -> s.source().name().equals(source.name())).toList();
    List<Span> left = new ArrayList<>();
    int end = 0;
    List<? extends Tree.Item> items = plan.files().stream().flatMap(f -> f.items().stream())
        .filter(i -> i.span().source().name().equals(source.name())).sorted(Comparator.comparingInt(i -> i.span().start())).toList();
    for (Tree.Item item : items) {
      // What stands between two statements is one that could not be read.
      addIfFaulty(source.span(Math.min(end, item.span().start()), item.span().start()), faults, left);
      if (isUnplaced(item, plan) || item instanceof Tree.Branch b && isCutShort(b, plan)) {
        left.add(item.span());
      } else {
        addIfFaulty(item.span(), faults, left);
      }
      end = Math.max(end, item.span().end());
    }
    addIfFaulty(source.span(end, source.text().length()), faults, left);
    return left;
  }

  private static void addIfFaulty(Span span, List<Span> faults, List<Span> left) {
    if (faults.stream().anyMatch(f -> f.start() >= span.start() && f.end() <= span.end())) {
      left.add(span);
    }
  }

  /** A branch that leads to a device that was left out, or may have been, has no way there. */
  private static boolean isCutShort(Tree.Branch branch, Compilation plan) {
    Doubts doubts = plan.house().doubts();
    String text = branch.span().text();
    return doubts.has(Doubt.WAY, branch.name().text())
        || doubts.names().getOrDefault(Doubt.CONTENTS, Set.of()).stream().anyMatch(room -> text.contains(" " + room + "."));
  }

  /** Patterns are not read before they are placed: what nothing places says nothing, which a finding says. */
  private static boolean isUnplaced(Tree.Item item, Compilation plan) {
    return item instanceof Tree.Pattern p && !plan.house().placements().containsValue(p.name().text());
  }

  /** Every word that the plan itself gives a meaning. */
  private static Set<String> names(Compilation plan) {
    House house = plan.house();
    Set<String> names = new HashSet<>();
    List<Collection<String>> all = List.of(house.dwellings().keySet(), house.services().keySet(), house.panels().keySet(),
        house.branches().keySet(), house.raceways().keySet(), house.rooms().keySet(), house.boxes().keySet(), house.devices().keySet(),
        house.trials().keySet(), house.placements().keySet(), house.placements().values());
    all.forEach(some -> some.forEach(name -> names.addAll(List.of(name.split("\\.")))));
    plan.files().stream().flatMap(f -> f.items().stream()).forEach(item -> declared(item, names));
    return names;
  }

  private static void declared(Tree.Item item, Set<String> names) {
    if (item instanceof Tree.Let let) {
      names.add(let.name().text());
    } else if (item instanceof Tree.Pattern pattern) {
      names.add(pattern.name().text());
      pattern.parameters().forEach(p -> names.add(p.text()));
      pattern.items().forEach(i -> declared(i, names));
    } else if (item instanceof Tree.Placing placing) {
      placing.repetition().ifPresent(r -> names.add(r.name().text()));
    }
  }

  /** What a record is made of; looked up once for each kind. */
  private static final ClassValue<Method[]> PARTS = new ClassValue<>() {
    @Override
    protected Method[] computeValue(Class<?> type) {
      return Arrays.stream(type.getRecordComponents()).map(RecordComponent::getAccessor)
          .filter(m -> m.getReturnType() != Span.class && m.getReturnType() != Source.class)
          .peek(m -> m.setAccessible(true)).toArray(Method[]::new);
    }
  };

  private static void write(Object thing, StringBuilder out) {
    if (thing instanceof Span || thing instanceof Source) {
      return;
    }
    if (thing instanceof Optional<?> optional) {
      optional.ifPresent(value -> write(value, out));
    } else if (thing instanceof Collection<?> things) {
      out.append('[');
      things.forEach(each -> write(each, out));
      out.append(']');
    } else if (thing instanceof Map<?, ?> map) {
      map.forEach((key, value) -> {
        write(key, out);
        write(value, out);
      });
    } else if (thing instanceof Record record) {
      out.append(record.getClass().getSimpleName()).append('(');
      for (Method part : PARTS.get(record.getClass())) {
        try {
          write(part.invoke(record), out);
        } catch (ReflectiveOperationException e) {
          throw new AssertionError(e);
        }
        out.append(',');
      }
      out.append(')');
    } else {
      out.append(thing);
    }
  }

  private static String read(Path path) {
    try {
      return Files.readString(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
