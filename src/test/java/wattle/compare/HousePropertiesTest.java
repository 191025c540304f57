package wattle.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.lockout.RandomHouse;
import wattle.read.SourceReader;
import wattle.trials.TrialResult;

/**
 * What changes nothing in a house changes no figure and no finding of it, over houses made at random: other units, other slots on the
 * same legs, the legs exchanged, other names, a joint in the middle of a run, a room in a file of its own.
 */
class HousePropertiesTest {
  private static final int HOUSES = Integer.getInteger("houses", 40);
  private static final Pattern LENGTH = Pattern.compile("\\b(\\d+) m(?=--| of )");
  private static final Pattern POWER = Pattern.compile("\\b(\\d+(?:\\.\\d+)?) kW\\b");
  private static final Pattern SLOT_LINE = Pattern.compile("(?m)^ (\\d+)((?:\\+\\d+)?) (\\d+) A ");
  private static final Pattern RUN = Pattern.compile("--(\\d+) m-- hall\\.d(\\d+)");
  /** Slots in two rows, on two or three legs: each such block may stand in another's place, and every pole stays on its leg. */
  private static final int BLOCK = 12;

  @TempDir
  Path folder;

  /** In turn on each supply, and of existing work. */
  private enum Kind {
    SPLIT_PHASE("120/240 V"), TWO_HOTS_OF_THREE("120/208 V"), THREE_PHASE("120/208 V"), ONE_HOT("230 V"), EXISTING("120/240 V");

    private final String volts;

    Kind(String volts) {
      this.volts = volts;
    }

    static Kind of(long seed) {
      return values()[(int) (seed % values().length)];
    }

    String house(long seed) {
      String text = RandomHouse.plan(seed).replace("main 120/240 V", "main " + volts);
      if (this == THREE_PHASE) {
        return text.replace(" 200 A { source", " 200 A three-phase { source");
      }
      return this == EXISTING
          ? text.replace(" 200 A { source", " 200 A existing { source").replaceAll("(?m)^((?:panel|branch|room) [^{]*)\\{", "$1existing {")
          : text;
    }
  }

  private static String house(long seed) {
    return Kind.of(seed).house(seed);
  }

  /** A house in which a supply of one hot, or a code that is not kept, hid all else would be no test. */
  @Test
  void theHousesOfEachSupplyAreReadInFull() {
    for (long seed = 0; seed < HOUSES; seed++) {
      Compilation plan = compiled(house(seed));
      assertThat(plan.completeness()).as(house(seed)).isNotEqualTo(Completeness.IN_PIECES);
      assertThat(plan.findings()).as(house(seed)).noneMatch(f -> f.headline().contains("cannot go on with"));
      assertThat(outlets(plan)).as(house(seed)).isNotEmpty();
    }
  }

  private Compilation compiled(String text) {
    Path path = folder.resolve("house.wattle");
    return new Compiler(SourceReader.FROM_DISK).compile(new Source(path.toString(), text), path);
  }

  private static Comparison compared(Compilation before, Compilation after) {
    return Comparison.of(plan(before), plan(after));
  }

  private static Plan plan(Compilation plan) {
    return new Plan(plan.figures(), plan.findings(), true, plan.undecided());
  }

  /** Findings by what they are, whatever slots and figures their headlines name. */
  private static List<String> findings(Compilation plan) {
    return plan.findings().stream().map(f -> f.severity() + " " + f.rule()).sorted().toList();
  }

  private void changesNothing(UnaryOperator<String> change, boolean alsoHeadlines) {
    int changed = 0;
    for (long seed = 0; seed < HOUSES; seed++) {
      String text = house(seed);
      String other = change.apply(text);
      changed += other.equals(text) ? 0 : 1;
      Compilation before = compiled(text);
      Compilation after = compiled(other);
      Comparison difference = compared(before, after);
      String what = "seed " + seed + "\n" + text + "\n" + other;
      // What is bought is named by its rating as it is stated.
      assertThat(difference.consequences().figures()).as(what).filteredOn(c -> c.measure().topic() != Measure.Topic.MATERIALS).isEmpty();
      assertThat(findings(after)).as(what).isEqualTo(findings(before));
      if (alsoHeadlines) {
        assertThat(difference.appeared()).as(what).extracting(Finding::headline).isEmpty();
        assertThat(difference.gone()).as(what).extracting(Finding::headline).isEmpty();
      }
    }
    assertThat(changed).as("houses that the change reached").isGreaterThan(HOUSES / 2);
  }

  private static String each(Pattern pattern, String text, java.util.function.Function<MatchResult, String> by) {
    return pattern.matcher(text).replaceAll(m -> Matcher.quoteReplacement(by.apply(m)));
  }

  @Test
  void inOtherUnits() {
    changesNothing(text -> each(POWER, each(LENGTH, text, m -> m.group(1) + "000 mm"),
        m -> Math.round(Double.parseDouble(m.group(1)) * 1000) + " W").replace("10 kA", "10000 A"), true);
  }

  @Test
  void inOtherSlotsOnTheSameLegs() {
    Random random = new Random(11);
    changesNothing(text -> {
      List<Integer> blocks = new ArrayList<>();
      for (int i = 0; i < 60 / BLOCK; i++) {
        blocks.add(i);
      }
      Collections.shuffle(blocks, random);
      return each(SLOT_LINE, text, m -> " " + in(blocks, m.group(1))
          + (m.group(2).isEmpty() ? "" : "+" + in(blocks, m.group(2).substring(1))) + " " + m.group(3) + " A ");
    }, false);
  }

  private static int in(List<Integer> blocks, String slot) {
    int at = Integer.parseInt(slot) - 1;
    return blocks.get(at / BLOCK) * BLOCK + at % BLOCK + 1;
  }

  /**
   * The currents of the two legs change places, and nothing at any device does. Hots of a three-phase supply have an order: with
   * reactance, exchanging two of them is another house.
   */
  @Test
  void withItsLegsExchanged() {
    for (long seed = 0; seed < HOUSES; seed++) {
      if (Kind.of(seed) == Kind.THREE_PHASE || Kind.of(seed) == Kind.TWO_HOTS_OF_THREE) {
        continue;
      }
      String text = house(seed);
      String other = each(SLOT_LINE, text, m -> " " + (Integer.parseInt(m.group(1)) + 2)
          + (m.group(2).isEmpty() ? "" : "+" + (Integer.parseInt(m.group(2).substring(1)) + 2)) + " " + m.group(3) + " A ");
      assertSameHouse("seed " + seed, text, other);
    }
  }

  @Test
  void withItsBranchesRenamed() {
    for (long seed = 0; seed < HOUSES; seed++) {
      String text = house(seed);
      String other = text.replaceAll("\\bb(\\d+)\\b", "spur$1");
      assertSameHouse("seed " + seed, text, other);
    }
  }

  private void assertSameHouse(String what, String text, String other) {
    assertThat(other).isNotEqualTo(text);
    Compilation before = compiled(text);
    Compilation after = compiled(other);
    assertThat(findings(after)).as(what + "\n" + text).isEqualTo(findings(before));
    assertThat(outlets(after)).as(what + "\n" + text).isEqualTo(outlets(before));
  }

  /** Volts and amperes at each outlet, to a part in a thousand. */
  private static Map<String, String> outlets(Compilation plan) {
    Map<String, String> outlets = new TreeMap<>();
    for (TrialResult.OutletReading outlet : plan.figures().trials().stated().outlets()) {
      outlets.put(outlet.name(), String.format(java.util.Locale.ROOT, "%.2f V %s", outlet.volts().si(),
          outlet.current().map(c -> String.format(java.util.Locale.ROOT, "%.3f A", c.si())).orElse("")));
    }
    return outlets;
  }

  /** What a box more costs in boxes and connectors is bought, so that materials are not held against each other. */
  @Test
  void withAJointInTheMiddleOfARun() {
    int split = 0;
    for (long seed = 0; seed < HOUSES; seed++) {
      String text = house(seed);
      Matcher run = RUN.matcher(text);
      if (!run.find() || Integer.parseInt(run.group(1)) < 2) {
        continue;
      }
      split++;
      int length = Integer.parseInt(run.group(1));
      String other = text.substring(0, run.start()) + "--1 m-- hall.joint --" + (length - 1) + " m-- hall.d" + run.group(2)
          + text.substring(run.end());
      other = other.replaceFirst("(room hall (?:existing )?\\{\n)", "$1 joint: junction\n");
      Compilation before = compiled(text);
      Compilation after = compiled(other);
      String what = "seed " + seed + "\n" + text + "\n" + other;
      assertThat(findings(after)).as(what).isEqualTo(findings(before));
      assertThat(outlets(after)).as(what).isEqualTo(outlets(before));
      assertThat(compared(before, after).consequences().figures()).as(what)
          .filteredOn(c -> c.measure().topic() != Measure.Topic.MATERIALS).isEmpty();
    }
    assertThat(split).isGreaterThan(HOUSES / 2);
  }

  @Test
  void withItsRoomInAFileOfItsOwn() throws IOException {
    for (long seed = 0; seed < HOUSES; seed++) {
      String text = house(seed);
      int room = text.indexOf("room hall ");
      Files.writeString(folder.resolve("rooms.wattle"), text.substring(room));
      Compilation before = compiled(text);
      Compilation after = compiled("use \"rooms.wattle\"\n" + text.substring(0, room));
      Comparison difference = compared(before, after);
      String what = "seed " + seed + "\n" + text;
      assertThat(difference.isEmpty()).as(what).isTrue();
      assertThat(findings(after)).as(what).isEqualTo(findings(before));
      assertThat(outlets(after)).as(what).isEqualTo(outlets(before));
    }
  }
}
