package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import wattle.golden.Golden;

/**
 * Every output of the handbook is what its command prints on a terminal of 100 columns, and every plan in it is part of the file that is
 * named above it. {@code | head -N} and {@code | tail -N} behind a command show the beginning and the end. With {@code -Dgolden=write}
 * outputs are written anew.
 */
class HandbookTest {
  private static final int COLUMNS = 100;
  private static final Pattern CONSOLE = Pattern.compile("```console\n\\$ (wattle [^\n]+)\n(.*?)```", Pattern.DOTALL);
  private static final Pattern PLAN = Pattern.compile("<!-- (\\S+\\.wattle) -->\n```wattle\n(.*?)```", Pattern.DOTALL);
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#:]+)(#[^)]*)?\\)");
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  private static List<Path> chapters() {
    try (Stream<Path> files = Files.list(Path.of("docs/handbook"))) {
      return files.filter(f -> f.toString().endsWith(".md")).sorted().toList();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @TestFactory
  Stream<DynamicTest> everyChapterShowsWhatCommandsPrint() {
    return chapters().stream().map(c -> DynamicTest.dynamicTest(c.getFileName().toString(), () -> check(c)));
  }

  private static void check(Path chapter) throws IOException {
    String text = Files.readString(chapter);
    Golden.check(chapter, CONSOLE.matcher(text)
        .replaceAll(m -> Matcher.quoteReplacement("```console\n$ " + m.group(1) + "\n" + printed(m.group(1)) + "```")));
    Matcher plan = PLAN.matcher(text);
    while (plan.find()) {
      assertThat(Files.readString(Path.of(plan.group(1)))).as(chapter.toString()).contains(plan.group(2));
    }
    assertThat(text.split("```wattle", -1).length - 1).as("plans with the file that they are from")
        .isEqualTo((int) PLAN.matcher(text).results().count());
    Matcher link = LINK.matcher(text);
    while (link.find()) {
      assertThat(chapter.resolveSibling(link.group(1))).exists();
    }
  }

  private static String printed(String line) {
    String command = line.replaceFirst(" \\| (head|tail) -\\d+$", "");
    List<String> arguments = new ArrayList<>();
    Matcher word = WORD.matcher(command.substring("wattle ".length()));
    while (word.find()) {
      arguments.add(word.group(1) != null ? word.group(1) : word.group(2));
    }
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments.toArray(String[]::new), new PrintWriter(out), new PrintWriter(err), OptionalInt.of(COLUMNS));
    assertThat(code).as(command + "\n" + err).isLessThan(ExitCode.USAGE);
    List<String> lines = out.toString().lines().toList();
    Matcher cut = Pattern.compile("\\| (head|tail) -(\\d+)$").matcher(line);
    if (cut.find()) {
      int count = Math.min(lines.size(), Integer.parseInt(cut.group(2)));
      lines = cut.group(1).equals("head") ? lines.subList(0, count) : lines.subList(lines.size() - count, lines.size());
    }
    return String.join("\n", lines.stream().map(String::stripTrailing).toList()) + (lines.isEmpty() ? "" : "\n");
  }

  /** Plans of the handbook are in order, and say what the chapter says of them. */
  @TestFactory
  Stream<DynamicTest> everyPlanIsTidy() {
    return Golden.plans("docs/handbook/plans").stream()
        .map(p -> DynamicTest.dynamicTest(p.getFileName().toString(), () -> {
          StringWriter out = new StringWriter();
          assertThat(Main.run(new String[]{"tidy", "--check", p.toString()}, new PrintWriter(out), new PrintWriter(out))).as(out.toString())
              .isZero();
        }));
  }
}
