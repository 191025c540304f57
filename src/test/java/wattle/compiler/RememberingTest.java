package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import wattle.finding.Placement;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.memo.Once;
import wattle.read.Reading;
import wattle.read.SourceReader;
import wattle.syntax.PartwiseParser;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;

/** Reading only what changed gives what reading everything gives, whatever is typed. */
class RememberingTest {
  private static final List<String> TYPED = List.of(
      "{", "}", "\"", "\n", "\r\n", "\r", ",", "//", "--", " ", "15 A", "branch", "\nbranch x by 14/2 NM-B { P --3 m-- hall.sw }\n",
      "room hall {\n", "\nlet a = 3 m\n", "(", ")", "🏠", "Ω", "\\", "\\\"", "\u0000", "through a,\n b", "use common", "+", "1", ".", "\t",
      "[]");

  /** A change of a text: so much is taken out at a place, and something put in; places are parts of a thousand. */
  record Change(int at, int takenOut, String putIn) {
    String apply(String text) {
      int start = (int) ((long) text.length() * at / 1000);
      int end = Math.min(text.length(), start + takenOut);
      return text.substring(0, start) + putIn + text.substring(end);
    }
  }

  @Provide
  Arbitrary<List<Change>> changes() {
    return Combinators.combine(
        Arbitraries.integers().between(0, 1000), Arbitraries.integers().between(0, 40), Arbitraries.of(TYPED))
        .as((at, out, in) -> new Change(at, out > 30 ? out : out % 3, in))
        .list()
        .ofMinSize(1)
        .ofMaxSize(6);
  }

  @Provide
  Arbitrary<Path> plans() throws IOException {
    List<Path> plans = new ArrayList<>();
    try (var files = Files.walk(Path.of("examples"))) {
      files.filter(f -> f.toString().endsWith(".wattle")).sorted().forEach(plans::add);
    }
    return Arbitraries.of(plans);
  }

  @Property(tries = 150)
  void treesAndFindingsAreTheSame(@ForAll("plans") Path plan, @ForAll("changes") List<Change> changes) throws IOException {
    PartwiseParser parser = new PartwiseParser();
    String text = Files.readString(plan);
    parser.parse(new Source("plan", text));
    for (Change change : changes) {
      text = change.apply(text);
      Source source = new Source("plan", text);
      PartwiseParser.Read partwise = parser.parse(source);
      var whole = PlanParser.parse(source);
      assertThat(partwise.findings()).isEqualTo(whole.findings());
      assertThat(dump(partwise.tree(), partwise.placement())).isEqualTo(dump(whole.value(), Placement.IN_PLACE));
    }
  }

  @Property(tries = 25)
  void housesAndFindingsAreTheSame(@ForAll("plans") Path plan, @ForAll("changes") List<Change> changes) throws IOException {
    Reading remembering = new Reading.Remembering();
    String text = Files.readString(plan);
    for (Change change : changes) {
      text = change.apply(text);
      SourceReader reader = new SourceReader(Map.of(plan.toAbsolutePath().normalize(), text), SourceReader.USUAL_MOST_BYTES);
      Source source = new Source(plan.toString(), text);
      Compilation quick = new Compiler(reader, remembering).compile(source, plan);
      Compilation slow = new Compiler(reader).compile(source, plan);
      assertThat(dump(quick.findings(), Placement.IN_PLACE)).isEqualTo(dump(slow.findings(), Placement.IN_PLACE));
      assertThat(dump(quick.house(), quick.placement())).isEqualTo(dump(slow.house(), Placement.IN_PLACE));
    }
  }

  /** A change of whole lines or words, after which most of a plan is well formed and some of it leads elsewhere. */
  record Shift(int kind, int one, int other) {
    String apply(String text) {
      List<String> lines = new ArrayList<>(text.lines().toList());
      int at = one % lines.size();
      int to = other % lines.size();
      switch (kind) {
        case 0 -> lines.remove(at);
        case 1 -> lines.add(to, lines.get(at));
        case 2 -> java.util.Collections.swap(lines, at, to);
        case 3 -> lines.set(at, "");
        case 5 -> lines.set(at, lines.get(at).replaceFirst(" ?[{}]", ""));
        default -> {
          String[] words = text.split("[^A-Za-z0-9.+-]+");
          // One of these everywhere: a name, a size, a trait, a slot.
          String from = words[one % words.length];
          return from.isEmpty()
              ? text
              : text.replaceFirst("\\b" + java.util.regex.Pattern.quote(from) + "\\b", words[other % words.length]);
        }
      }
      return String.join("\n", lines) + "\n";
    }
  }

  @Provide
  Arbitrary<List<Shift>> shifts() {
    Arbitrary<Integer> any = Arbitraries.integers().between(0, 1_000_000).withDistribution(net.jqwik.api.RandomDistribution.uniform());
    return Combinators.combine(Arbitraries.of(0, 1, 2, 3, 4, 4, 4, 5, 5), any, any).as(Shift::new).list().ofMinSize(1).ofMaxSize(8);
  }

  /** Each shift is typed, and after some of them all is undone at once. */
  @Property(tries = 60)
  void whatLeadsElsewhereIsBoundAnew(@ForAll("plans") Path plan, @ForAll("shifts") List<Shift> shifts) throws IOException {
    Reading remembering = new Reading.Remembering();
    String written = Files.readString(plan);
    String text = written;
    structuresAreTheSame(plan, text, remembering);
    for (Shift shift : shifts) {
      text = shift.one() % 5 == 0 ? written : shift.apply(text);
      structuresAreTheSame(plan, text, remembering);
    }
  }

  /** A line of a pattern is many things of the house. */
  @Property(tries = 8)
  void whatAPatternStandsForIsBoundAnew(@ForAll("shifts") List<Shift> shifts) throws IOException {
    whatLeadsElsewhereIsBoundAnew(Path.of("examples/tern-court/house.wattle"), shifts);
  }

  private static void structuresAreTheSame(Path plan, String text, Reading remembering) {
    SourceReader reader = new SourceReader(Map.of(plan.toAbsolutePath().normalize(), text), SourceReader.USUAL_MOST_BYTES);
    Source source = new Source(plan.toString(), text);
    Compilation quick = new Compiler(reader, remembering).structure(source, plan);
    Compilation slow = new Compiler(reader).structure(source, plan);
    assertThat(dump(quick.findings(), Placement.IN_PLACE)).isEqualTo(dump(slow.findings(), Placement.IN_PLACE));
    assertThat(dump(quick.house(), quick.placement())).isEqualTo(dump(slow.house(), Placement.IN_PLACE));
  }

  @Test
  void whatStayedTheSameIsNotBoundAgain() {
    String plan = "plan \"p\"\npanel P {\n  1 15 A b\n}\nbranch b by 14/2 NM-B {\n  P --3 m-- r.sw --2 m-- r.lamp\n}\n"
        + "room r is hall {\n  sw: switch for lamp\n  lamp: light 12 W\n}\n";
    Reading remembering = new Reading.Remembering();
    var before = structure(plan, remembering).house();
    var after = structure(plan.replace("plan \"p\"", "plan \"house\""), remembering).house();
    var switched = structure(plan.replace("for lamp", ""), remembering).house();
    assertThat(after.branches().get("b")).isSameAs(before.branches().get("b"));
    assertThat(after.devices().get("r.lamp")).isSameAs(before.devices().get("r.lamp"));
    assertThat(switched.branches().get("b")).isNotEqualTo(before.branches().get("b"));
  }

  private static Compilation structure(String text, Reading reading) {
    SourceReader reader = new SourceReader(Map.of(), SourceReader.USUAL_MOST_BYTES);
    return new Compiler(reader, reading).structure(new Source("plan", text), Path.of("plan"));
  }

  /** While a text or a block is not closed yet, the parts beyond the next statement stay what they are. */
  @Test
  void whatIsNotClosedYetIsReadWithWhatFollowsIt() {
    String plan = "panel P {\n  1 15 A b\n}\nroom a {\n  l: light\n}\nroom b {\n  l: light\n}\n";
    for (String typed : List.of(" \"Ha", " {", "\n}", "\nroom-x {\n", "\nroom𝒳 {\n", "\nroom🏠\n")) {
      PartwiseParser parser = new PartwiseParser();
      PlanTree before = parser.parse(new Source("plan", plan)).tree();
      Source broken = new Source("plan", plan.replace("15 A b", "15 A b" + typed));
      PartwiseParser.Read read = parser.parse(broken);
      assertThat(read.tree().items()).as(typed).last().isSameAs(before.items().get(2));
      assertThat(read.findings()).isEqualTo(PlanParser.parse(broken).findings());
      assertThat(dump(read.tree(), read.placement())).isEqualTo(dump(PlanParser.parse(broken).value(), Placement.IN_PLACE));
    }
  }

  @Test
  void whatStayedTheSameIsNotReadAgain() {
    PartwiseParser parser = new PartwiseParser();
    PlanTree before = parser.parse(new Source("plan", "let a = 1 m\nlet b = 2 m\nroom r {\n  lamp: light\n}\n")).tree();
    PlanTree after = parser.parse(new Source("plan", "let c = 1 m\nlet b = 2 m\nroom r {\n  lamp: light\n}\n")).tree();
    assertThat(after.items().get(0)).isNotSameAs(before.items().get(0));
    assertThat(after.items().get(1)).isSameAs(before.items().get(1));
    assertThat(after.items().get(2)).isSameAs(before.items().get(2));
  }

  /** Everything in a value, with each span where it stands. */
  private static String dump(Object value, Placement placement) {
    StringBuilder text = new StringBuilder();
    dump(value, placement, text);
    return text.toString();
  }

  private static void dump(Object value, Placement placement, StringBuilder into) {
    if (value instanceof Span span) {
      Span placed = placement.whole(span);
      into.append(placed.source().name()).append('@').append(placed.start()).append('-').append(placed.end());
    } else if (value instanceof Source source) {
      into.append(source.name());
    } else if (value instanceof Optional<?> optional) {
      optional.ifPresentOrElse(v -> dump(v, placement, into), () -> into.append("none"));
    } else if (value instanceof Once<?> once) {
      dump(once.get(), placement, into);
    } else if (value instanceof List<?> list) {
      list.forEach(v -> dumpPart(v, placement, into));
    } else if (value instanceof java.util.Set<?> set) {
      set.stream().map(v -> dump(v, placement)).sorted().forEach(into::append);
    } else if (value instanceof Map<?, ?> map) {
      map.forEach((k, v) -> dumpPart(v, placement, into.append(k).append('=')));
    } else if (value instanceof Record record) {
      into.append(record.getClass().getSimpleName()).append('(');
      for (RecordComponent component : record.getClass().getRecordComponents()) {
        try {
          var accessor = component.getAccessor();
          accessor.setAccessible(true);
          dumpPart(accessor.invoke(record), placement, into.append(component.getName()).append('='));
        } catch (ReflectiveOperationException e) {
          throw new AssertionError(e);
        }
      }
      into.append(')');
    } else {
      into.append(value);
    }
  }

  private static void dumpPart(Object value, Placement placement, StringBuilder into) {
    dump(value, placement, into);
    into.append('\n');
  }
}
