package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.cli.Main;
import wattle.finding.Severity;

/** Terms of the trade with figures that the engine finds on the lessons, whose expectations are worked by hand. */
class PrimerTest {
  @TempDir
  Path folder;

  private static String run(int code, String... arguments) {
    StringWriter out = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(out))).as(out.toString()).isEqualTo(code);
    return out.toString();
  }

  @Test
  void theLessonsAreThoseOfTheExamplesAndComeOut() throws Exception {
    Compilation lessons = Primer.lessons();
    assertThat(lessons.source().text()).isEqualTo(Files.readString(Path.of(Primer.LESSONS)));
    assertThat(lessons.facts()).noneMatch(f -> f.severity() == Severity.ERROR && f.silenced().isEmpty());
    assertThat(Primer.all()).allSatisfy(p -> {
      assertThat(lessons.house().trials()).containsKey(p.trial());
      assertThat(p.text()).endsWith(".");
    });
    assertThat(Primer.all()).hasSizeGreaterThan(12);
    assertThat(Primer.all().stream().flatMap(p -> p.terms().stream())).doesNotHaveDuplicates();
  }

  @Test
  void everyTermIsExplainedWithItsFigures() {
    for (Primer primer : Primer.all()) {
      String page = run(0, "explain", primer.title());
      assertThat(page).startsWith(primer.title() + "\n\n").contains(primer.text()).contains("On the mock-up wall: ")
          .contains("Try it: wattle trial " + Primer.LESSONS + " " + primer.trial());
      assertThat(page.lines().filter(l -> l.matches("  .+ at .+: .*[0-9].*"))).as(primer.title()).isNotEmpty();
    }
    assertThat(run(0, "explain", "shared", "neutral")).contains("neutral at counter: 0 A");
    assertThat(run(0, "explain", "open-neutral")).containsPattern("voltage at galley.c2.upper: (79|80)[.0-9]* V");
    assertThat(run(0, "explain", "loose joint")).contains("heat at tubs.washer: 50 W");
    assertThat(run(0, "explain", "neutral")).contains("neutral (measure)").contains("neutral (event of a trial)");
  }

  @Test
  void aPageHasThePictureOfItsBranch() throws Exception {
    for (String term : List.of("leg", "drop", "open neutral")) {
      Path page = folder.resolve(term + ".html");
      run(0, "explain", term, "-o", page.toString());
      assertThat(Files.readString(page)).contains("<svg").contains("<h1>" + term + "</h1>").contains("wattle trial");
    }
    assertThat(run(2, "explain", "box-overfilled", "-o", folder.resolve("b.html").toString())).contains("not one of them");
  }
}
