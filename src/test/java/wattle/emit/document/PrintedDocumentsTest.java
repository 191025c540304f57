package wattle.emit.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.cli.Main;
import wattle.emit.media.picture.PrintedPages;

/**
 * Documents of the commands other than the report, as they are printed on letter sheets: words, tables and pictures have nine points
 * or more, and no page that the text runs over ends above its middle. Nine points are common practice for what is read at arm's
 * length.
 */
class PrintedDocumentsTest {
  @TempDir
  private Path folder;

  private PrintedPages printed(String... arguments) throws Exception {
    Path file = folder.resolve("document.pdf");
    List<String> all = new ArrayList<>(List.of(arguments));
    all.addAll(List.of("--out", file.toString(), "--force"));
    StringWriter err = new StringWriter();
    int code = Main.run(all.toArray(String[]::new), new PrintWriter(new StringWriter()), new PrintWriter(err));
    assertThat(code).as(err.toString()).isLessThan(2);
    return PrintedPages.of(file);
  }

  /** @param begun numbers of pages on which something begins that has a page to itself, so that the page before may end anywhere */
  private static void check(PrintedPages pages, Set<Integer> begun) {
    pages.pages().forEach(page -> {
      assertThat(page.leastOfPictures()).as("pictures, page " + page.number()).isGreaterThan(8.99);
      assertThat(page.leastOfWords()).as("words, page " + page.number()).isGreaterThan(8.99);
      if (page.number() < pages.pages().size() && !begun.contains(page.number() + 1)) {
        assertThat(page.filled()).as("page " + page.number()).isGreaterThan(0.5);
      }
    });
  }

  @ParameterizedTest
  @ValueSource(strings = {"alder-court", "cottage", "hollin-farm", "tamarack-road"})
  void documentsOfAPlanAreReadAtArmsLength(String example) throws Exception {
    String plan = "examples/" + example + "/house.wattle";
    check(printed("permit", plan), Set.of());
    PrintedPages worksheet = printed("permit", plan, "--worksheet");
    check(worksheet, Set.of());
    assertThat(worksheet.pages()).hasSize(1);
    check(printed("test-sheet", plan), Set.of());
    PrintedPages questions = printed("questions", plan);
    check(questions, Set.of(questions.pageWith("Answer key")));
  }

  /** Each panel has a page, whose list is no longer than a page. */
  @ParameterizedTest
  @ValueSource(strings = {"alder-court, 2", "cottage, 1", "tamarack-road, 2", "tern-court, 9"})
  void directoriesHaveAPageForEachPanel(String example) throws Exception {
    String[] words = example.split(", ");
    PrintedPages pages = printed("directory", "examples/" + words[0] + "/house.wattle");
    assertThat(pages.pages()).hasSize(Integer.parseInt(words[1]));
    pages.pages().forEach(page -> assertThat(page.leastOfWords()).as("page " + page.number()).isGreaterThan(8.99));
  }

  @Test
  void lockoutsAreReadAtArmsLength() throws Exception {
    check(printed("lockout", "examples/alder-court/house.wattle", "kitchen.c1"), Set.of());
    check(printed("lockout", "examples/hollin-farm/house.wattle", "panel", "B"), Set.of());
  }

  @Test
  void comparisonsAreReadAtArmsLength() throws Exception {
    check(printed("compare", "examples/kitchen-renovation/before.wattle", "examples/kitchen-renovation/after.wattle"), Set.of());
  }
}
