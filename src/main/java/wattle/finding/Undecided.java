package wattle.finding;

import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Which findings a plan could not be asked about, since what they would be about is in doubt after a mistake in it: that they are not
 * there says nothing.
 *
 * @param questions what was asked, and could not be decided for a doubt
 * @param whole names of what was not looked for, or not in the whole house
 * @param gone whether a name is that of no thing of the house, where some were left out
 */
public record Undecided(Set<Question> questions, Set<String> whole, Predicate<String> gone) {
  /** Of a plan without a doubt. */
  public static final Undecided NOTHING = new Undecided(Set.of(), Set.of(), name -> false);

  public Undecided {
    questions = Set.copyOf(questions);
    whole = Set.copyOf(whole);
  }

  /**
   * Whether a rule is broken by a thing.
   *
   * @param subject name of the thing; absent for what has no name
   */
  public record Question(String rule, Optional<String> subject) {}

  /** Whether nobody can tell if a finding, made of another revision or before the mistake, would be made now. */
  public boolean has(Finding finding) {
    return whole.contains(finding.rule()) || questions.contains(new Question(finding.rule(), finding.subject()))
        || finding.subject().filter(gone).isPresent();
  }

  /** At how many things a rule could not be decided. */
  public int count() {
    return questions.size();
  }
}
