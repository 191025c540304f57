package wattle.compiler;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import wattle.finding.Source;
import wattle.read.SourceReader;

/**
 * A term of the trade for who learns it, with a trial of the lessons that shows it.
 *
 * @param terms by which it is asked for; the first is its title
 * @param trial of the lessons
 * @param text a paragraph
 */
public record Primer(List<String> terms, String trial, String text) {
  /** Where a reader finds the lessons. */
  public static final String LESSONS = "examples/classroom/lessons.wattle";

  public Primer {
    terms = List.copyOf(terms);
  }

  /** All terms. */
  public static List<Primer> all() {
    return BuildText.of("primer.txt").lines().map(l -> l.split("\\|", 3))
        .map(l -> new Primer(Arrays.asList(l[0].split(", ")), l[1], l[2])).toList();
  }

  /** The one that is asked for; hyphens and blanks are alike. */
  public static Optional<Primer> of(String term) {
    String asked = term.strip().replace('-', ' ');
    return all().stream().filter(p -> p.terms.stream().anyMatch(t -> t.replace('-', ' ').equalsIgnoreCase(asked))).findFirst();
  }

  /** The plan of the lessons, compiled. */
  public static Compilation lessons() {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source(LESSONS, BuildText.of("lessons.wattle")), Path.of(LESSONS));
  }

  public String title() {
    return terms.get(0);
  }
}
