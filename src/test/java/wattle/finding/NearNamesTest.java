package wattle.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NearNamesTest {
  /** Optimal string alignment distance by its recurrence, as textbooks print it. */
  private static int distance(String a, String b) {
    int[][] cost = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          cost[i][j] = i + j;
          continue;
        }
        int replaced = cost[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        cost[i][j] = Math.min(replaced, Math.min(cost[i - 1][j], cost[i][j - 1]) + 1);
        if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
          cost[i][j] = Math.min(cost[i][j], cost[i - 2][j - 2] + 1);
        }
      }
    }
    return cost[a.length()][b.length()];
  }

  private static String word(Random random) {
    StringBuilder word = new StringBuilder();
    for (int i = random.nextInt(9); i >= 0; i--) {
      word.append("ab1".charAt(random.nextInt(3)));
    }
    return word.toString();
  }

  @Test
  void aNameIsNearByTheTextbookDistance() {
    Random random = new Random(4);
    for (int i = 0; i < 20_000; i++) {
      String word = word(random);
      String name = word(random);
      int most = Math.max(1, Math.min(3, word.length() / 3));
      int distance = distance(word, name);
      assertThat(NearNames.of(word, List.of(name))).as("%s and %s", word, name)
          .isEqualTo(distance <= most && distance < Math.max(2, word.length()) ? List.of(name) : List.of());
    }
  }

  @Test
  void nearestFirstAndThreeAtMost() {
    assertThat(NearNames.of("kitchen", List.of("kitchens", "kitchen1", "kichen", "kit", "kitcehn"))).containsExactly("kichen", "kitcehn",
        "kitchen1");
  }
}
