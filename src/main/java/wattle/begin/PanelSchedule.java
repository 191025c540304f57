package wattle.begin;

import java.util.List;

/**
 * What a panel schedule says, as far as a plan has a word for it.
 *
 * @param ways in the order of their slots
 * @param mainAmperes of the main breaker; 0 where no row names it
 * @param told what was taken for granted or left out, a sentence each
 */
record PanelSchedule(List<Way> ways, int mainAmperes, List<String> told) {
  PanelSchedule {
    ways = List.copyOf(ways);
    told = List.copyOf(told);
  }
}
