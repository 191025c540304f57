package wattle.begin;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A breaker or fuse of a panel schedule.
 *
 * @param slots numbers, from 1
 * @param half {@code a} or {@code b} of a half-size breaker; empty for a whole one
 * @param amperes 0 for a slot whose breaker has no rating in the schedule
 * @param traits {@code arc-fault}, {@code ground-fault}
 * @param description may be empty
 * @param spare whether nothing is on it
 */
record Way(List<Integer> slots, String half, int amperes, Set<String> traits, String description, boolean spare) {
  Way {
    slots = List.copyOf(slots);
    traits = Set.copyOf(traits);
  }

  /** As the notation writes them: {@code 2+4}, {@code 7a}. */
  String slotText() {
    return slots.stream().map(s -> s + half).collect(Collectors.joining("+"));
  }

  /** Its branch, by the first slot: {@code c7a}. */
  String name() {
    return "c" + slots.get(0) + half;
  }

  /** The same breaker with so many slots from its first, one row beneath the other. */
  Way withPoles(int poles, int step) {
    return new Way(IntStream.range(0, poles).mapToObj(i -> slots.get(0) + i * step).toList(), half, amperes, traits, description, spare);
  }

  Way half(String which) {
    return new Way(slots, which, amperes, traits, description, spare);
  }
}
