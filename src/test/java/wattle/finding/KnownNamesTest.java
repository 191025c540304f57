package wattle.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class KnownNamesTest {
  private static String word(Random random, String letters, int longest) {
    return random.ints(1 + random.nextInt(longest), 0, letters.length()).mapToObj(i -> letters.substring(i, i + 1))
        .collect(Collectors.joining());
  }

  private static String misspelled(Random random, String word) {
    StringBuilder wrong = new StringBuilder(word);
    for (int edits = random.nextInt(5); edits > 0 && wrong.length() > 1; edits--) {
      int at = random.nextInt(wrong.length() - 1);
      switch (random.nextInt(4)) {
        case 0 -> wrong.deleteCharAt(at);
        case 1 -> wrong.insert(at, 'x');
        case 2 -> wrong.setCharAt(at, 'y');
        default -> wrong.insert(at, wrong.charAt(at + 1)).deleteCharAt(at + 2);
      }
    }
    return wrong.toString();
  }

  @ParameterizedTest
  @ValueSource(strings = {"ab", "aB1", "abcdefgh.0123456789", "I\u0130\u0131iS\u00DF"})
  void manyNamesAreAnsweredAsEachComparedByItself(String letters) {
    Random random = new Random(7);
    for (int longest : List.of(3, 7, 16)) {
      Set<String> names = new HashSet<>();
      for (int i = 0; i < 300; i++) {
        names.add((i % 3 == 0 ? "kitchen." : "") + word(random, letters, longest));
      }
      KnownNames known = new KnownNames(names);
      List<String> all = new ArrayList<>(names);
      for (int i = 0; i < 1000; i++) {
        String word = misspelled(random, i % 2 == 0 ? all.get(random.nextInt(all.size())) : word(random, letters, longest + 4));
        assertThat(known.near(word)).as(word).isEqualTo(NearNames.of(word, names));
        String except = all.get(i % all.size());
        assertThat(known.near(word, except)).as("%s but %s", word, except)
            .isEqualTo(NearNames.of(word, names.stream().filter(n -> !n.equals(except)).toList()));
        assertThat(known.mayMean(word)).as("any for %s", word)
            .isEqualTo(names.stream().anyMatch(n -> !NearNames.of(n, List.of(word)).isEmpty()));
      }
    }
  }

  @Test
  void theNameLeftOutMakesRoomForTheNext() {
    Set<String> names = IntStream.range(0, 100).mapToObj(i -> "panel" + i).collect(Collectors.toSet());
    KnownNames known = new KnownNames(names);
    assertThat(known.near("pamel7")).containsExactly("panel7", "panel0", "panel1");
    assertThat(known.near("pamel7", "panel0")).containsExactly("panel7", "panel1", "panel17");
    assertThat(known.near("pamel7", "panel9")).containsExactly("panel7", "panel0", "panel1");
  }

  /** How many letters an answer compares on the average where many names are known. */
  private static int compared(int names, IntFunction<String> name, IntFunction<String> word) {
    Set<String> known = IntStream.range(0, names).mapToObj(name).collect(Collectors.toSet());
    NameIndex fromStart = new NameIndex(known, false);
    NameIndex fromEnd = new NameIndex(known, true);
    int compared = 0;
    for (int i = 0; i < 20; i++) {
      String wrong = word.apply(i * (names / 20));
      Set<String> found = new HashSet<>();
      for (int edits = 1; edits <= NearNames.mostEdits(wrong) && found.size() < NearNames.MOST; edits++) {
        compared += fromStart.search(wrong, edits, found::add) + fromEnd.search(wrong, edits, found::add);
      }
    }
    return compared / 20;
  }

  @Test
  void ofManyNamesFewLettersAreCompared() {
    int many = 20_000;
    assertThat(compared(many, i -> "branch" + i, i -> "brnach" + i)).as("a swap in what all begin with").isLessThan(many / 3);
    assertThat(compared(many, i -> "branch" + i, i -> "nothing" + i)).as("another word before the number").isLessThan(many / 3);
    assertThat(compared(many, i -> "kitchen.c" + i, i -> "kitchen.b" + i)).as("another letter before the number").isLessThan(many / 3);
    assertThat(compared(many, i -> i + ".light", i -> i + ".lihgt")).as("a swap in what all end with").isLessThan(many / 3);
    assertThat(compared(many, i -> word(new Random(i), "abcdefghijklmnopqrstuvwxyz", 12), i -> word(new Random(~i),
        "abcdefghijklmnopqrstuvwxyz", 12))).as("words of no plan").isLessThan(many / 3);
  }
}
