package wattle.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.edit.Formatter;
import wattle.emit.document.changes.Changes;
import wattle.finding.Source;
import wattle.quantity.UnitSystem;
import wattle.read.SourceReader;

/** Revisions are compared in things of the house; the order of the comparison only turns its sign. */
class ComparisonTest {
  private static final Path PLAN = Path.of("examples/cottage/house.wattle");

  private static final String TEXT = text();

  /** Revisions of one line each, as a person would make them. */
  private static final List<String[]> REVISIONS = List.of(
      new String[]{"revision \"A\"", "revision \"B\""},
      new String[]{"--4 m-- mainroom.sw", "--4.5 m-- mainroom.sw"},
      new String[]{"15 A  fuse leg B", "20 A  fuse leg B"},
      new String[]{"leg A    kitchen", "leg B    kitchen"},
      new String[]{"light 60 W", "light 75 W"},
      new String[]{"room bunkroom \"Bunk room\"", "room bunkroom \"Guests\""},
      new String[]{"earth  rods by 6 Cu 40 ohm", "earth  rods by 4 Cu 25 ohm"},
      new String[]{"receptacle 300 W ungrounded", "receptacle 350 W ungrounded"},
      new String[]{"by 10/3 NM existing", "by 8/3 NM-B"},
      new String[]{" --2 m-- cook.o2", ""},
      new String[]{"floor-area 54 m2", "floor-area 60 m2"});

  private static String text() {
    try {
      return Files.readString(PLAN);
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), PLAN);
  }

  private static Comparison compare(String before, String after) {
    Compilation a = compile(before);
    Compilation b = compile(after);
    return Comparison.of(plan(a), plan(b));
  }

  private static Plan plan(Compilation plan) {
    return new Plan(plan.figures(), plan.findings(), plan.completeness() != Completeness.IN_PIECES, plan.undecided());
  }

  @Provide
  Arbitrary<String> revised() {
    return Arbitraries.subsetOf(REVISIONS)
        .map(
            chosen -> {
              String text = TEXT;
              for (String[] revision : chosen) {
                assertThat(text).contains(revision[0]);
                text = text.replace(revision[0], revision[1]);
              }
              return text;
            });
  }

  @Property(tries = 60)
  void comparingTheOtherWayRoundMirrors(@ForAll("revised") String one, @ForAll("revised") String other) {
    assertThat(Changes.text(compare(other, one))).isEqualTo(Changes.text(compare(one, other).mirrored()));
  }

  @Property(tries = 40)
  void aPlanAndItsTidiedSelfDoNotDiffer(@ForAll("revised") String text) {
    String tidied = Formatter.format(new Source("house.wattle", text)).value();
    assertThat(compare(text, tidied).isEmpty()).isTrue();
  }

  @Property(tries = 40)
  void everyRevisionOfALineIsSeen(@ForAll("revised") String text) {
    assertThat(compare(TEXT, text).isEmpty()).isEqualTo(TEXT.equals(text));
  }

  @Test
  void aRenamedRoomIsRenamedAndNothingElse() {
    assertThat(Changes.text(compare(TEXT, TEXT.replace("bunkroom", "loft"))))
        .isEqualTo("= room loft, formerly bunkroom\n");
  }

  @Test
  void aRenamedBranchIsRenamedAndNothingElse() {
    String renamed = TEXT.replace("stove    \"Stove\"", "hob      \"Stove\"").replace("branch stove", "branch hob");
    assertThat(Changes.text(compare(TEXT, renamed))).isEqualTo("= branch hob, formerly stove\n");
  }

  @Test
  void aMoveAndItsConsequence() {
    String moved = TEXT.replace("fuse leg A+B", "fuse leg A+A");
    assertThat(Changes.text(compare(TEXT, moved)))
        .contains("~ breaker of stove: leg A+B -> A+A")
        .contains("! new finding: error: both hots of 'stove' come from leg A [shared-neutral-same-leg]");
  }

  /** The blanks of a cable are not its name: nothing changes, and it is one item of the list to buy. */
  @Test
  void theBlanksInACableAreNoChange() {
    String loose = """
        plan "Loose"
        use code us-2023
        service main 120/240 V 200 A {
          source available 10 kA
          run 10 m of 2 in  PVC with 3 x 4/0Cu , // hots and neutral
            2 Cu ground
          earth rods by 6Cu
        }
        panel P from main { bus 200 A   slots 20   bonded
          main breaker 200 A 22 kA
          1+3 20 A two-pole a "A"
        }
        raceway r by 3 / 4in EMT
        branch a by 12 / 3NM-B { P --3 m by 10/3NM-B-- k.o --2 m by 10/3 NM-B-- k.p }
        room k { o: split receptacle   p: receptacle on red }
        """;
    String tidied = Formatter.format(new Source("house.wattle", loose)).value();
    assertThat(tidied).isNotEqualTo(loose).contains("12/3 NM-B", "3 x 4/0 Cu,", "3/4 in EMT");
    assertThat(compare(loose, tidied)).satisfies(c -> assertThat(Changes.text(c)).isEqualTo(Changes.text(compare(tidied, tidied))));
    assertThat(compile(loose).house().branches().get("a").wiring().text()).isEqualTo("12/3 NM-B");
  }

  /** Rules are not asked of a plan that is wired wrong; what they found of the other has neither gone nor come. */
  @Test
  void whatWasNotAskedHasNotGone() {
    String judged = TEXT.replace("receptacle 300 W ungrounded", "receptacle 300 W");
    String broken = judged.replace("light 60 W", "lihgt 60 W");
    assertThat(compile(judged).completeness()).isEqualTo(Completeness.SOUND);
    assertThat(compile(judged).findings()).isNotEmpty();
    Comparison comparison = compare(judged, broken);
    assertThat(comparison.gone()).isEmpty();
    assertThat(comparison.appeared()).extracting(f -> f.rule()).containsOnly("kind-unknown");
    assertThat(Changes.text(comparison)).contains("after: what rules found in the other revision (",
        "): its errors put them in doubt");
    assertThat(Changes.text(compare(broken, judged))).isEqualTo(Changes.text(comparison.mirrored()));
  }

  /** A plan in feet has its materials in feet, and each row adds up; what is found at several places is told once. */
  @Test
  void figuresAreInTheUnitsOfThePlan() {
    String before = """
        plan "Feet"
        use code us-2023
        service main 120/240 V 100 A { source available 5 kA   earth rods by 6 Cu 25 ohm }
        panel P from main {
          bus 100 A   slots 12   bonded
          main breaker 100 A 10 kA
          1  15 A  arc-fault  hall  "Hall"
        }
        branch hall by 14/2 NM-B { P --20 ft-- hall.a --35 ft-- hall.b --10 ft-- hall.c }
        room hall { a: receptacle tamper-resistant   b: receptacle tamper-resistant   c: receptacle tamper-resistant }
        """;
    Comparison comparison = compare(before, before.replace("35 ft", "61 ft").replace("1  15 A", "1  20 A")).shownIn(UnitSystem.CUSTOMARY);
    String text = Changes.text(comparison);
    List<String> cable = text.lines().filter(l -> l.startsWith("  cable: 14/2 NM-B")).toList();
    assertThat(cable).singleElement().asString().contains(" ft -> ", " ft  +").doesNotContain(" m");
    List<java.math.BigDecimal> figures = java.util.regex.Pattern.compile("([0-9.]+) ft").matcher(cable.get(0)).results()
        .map(r -> new java.math.BigDecimal(r.group(1))).toList();
    assertThat(figures.get(1).subtract(figures.get(0))).isEqualTo(figures.get(2));
    assertThat(text).contains("circuit 'hall' is too small for its breaker: 14 AWG copper on 20 A [breaker-above-conductor]\n");
    assertThat(Changes.markdown(comparison, "a", "b")).contains(" ft | +");
    Comparison alike = compare(before, before.replace(" tamper-resistant", ""));
    assertThat(Changes.text(alike)).contains("hall.a; the same at hall.b, hall.c [tamper-resistance-missing]\n");
    assertThat(Changes.markdown(alike, "a", "b")).contains("hall.a; the same at hall.b, hall.c (`tamper-resistance-missing`)");
  }

  /** A breaker names a branch that is not there, and another branch has that name in the other revision: they are two things. */
  @Test
  void aNameThatIsOnlySpokenOfIsNotTheThingThatHasItLater() {
    String plan = """
        plan "Named"
        service main 120/240 V 100 A { source available 10 kA }
        panel P from main {
          bus 100 A  slots 12  bonded
          main breaker 100 A 10 kA
          1 15 A arc-fault hall
          5 15 A arc-fault %s
        }
        branch %s by 14/2 NM-B { P --9 m-- hall.sw --3 m-- hall.lamp }
        room hall { sw: switch for lamp   lamp: light 12 W }
        """;
    String before = plan.formatted("extra", "extra");
    String after = plan.formatted("extra", "hall");
    Comparison comparison = compare(before, after);
    assertThat(Changes.text(comparison)).contains("= branch hall, formerly extra");
    assertThat(Changes.text(compare(after, before))).isEqualTo(Changes.text(comparison.mirrored()));
  }

  /** The breakers of a branch in two slots may be two things of one name: one goes and one comes, in that order from either side. */
  @Test
  void whatGoesAndWhatComesUnderOneNameKeepTheirOrder() {
    Thing thing = new Thing(Thing.Kind.BREAKER, "hall");
    Comparison none = compare(TEXT, TEXT);
    Comparison moved = new Comparison(
        List.of(new Change.Removed(thing, List.of("slot P/2")), new Change.Added(thing, List.of("slot P/1"))), List.of(), List.of(),
        none.consequences(), none.placements());
    assertThat(moved.mirrored().changes()).containsExactly(
        new Change.Removed(thing, List.of("slot P/1")), new Change.Added(thing, List.of("slot P/2")));
    assertThat(moved.mirrored().mirrored()).isEqualTo(moved);
  }
}
