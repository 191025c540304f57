package wattle.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compiler;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.golden.Golden;
import wattle.read.SourceReader;

/** Whatever the text, there is a tree and there are findings, and both are the same for every line end. */
class AnyTextTest {
  private static final List<String> PLANS = Golden.plans("examples").stream().map(AnyTextTest::read).toList();

  private static String read(Path path) {
    try {
      return Files.readString(path);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static List<Finding> findings(String text) {
    return new Compiler(SourceReader.FROM_DISK).structure(new Source("house.wattle", text), Path.of("examples/alder-court/house.wattle"))
        .findings();
  }

  @Provide
  Arbitrary<String> prefixes() {
    return Arbitraries.of(PLANS).flatMap(p -> Arbitraries.integers().between(0, p.length()).map(n -> p.substring(0, n)));
  }

  @Provide
  Arbitrary<String> damaged() {
    Arbitrary<String> piece = Arbitraries.of("", "{", "}", "(", ")", "--", "\"", "\n", "15", "A", "=", "m", ".", ":", "branch", "\u0000",
        "Ω", "🔌", "§");
    return Arbitraries.of(PLANS)
        .flatMap(
            plan -> Combinators.combine(
                Arbitraries.integers().between(0, plan.length() - 1), Arbitraries.integers().between(0, 12), piece)
                .as((at, cut, in) -> plan.substring(0, at) + in + plan.substring(Math.min(plan.length(), at + cut))));
  }

  @Property(tries = 300)
  void anyPrefixOfAPlanGivesFindingsAndNoTrace(@ForAll("prefixes") String text) {
    findings(text).forEach(f -> assertThat(f.headline()).isNotBlank().doesNotContain("\n"));
  }

  @Property(tries = 400)
  void anyDamageGivesFindingsAndNoTrace(@ForAll("damaged") String text) {
    findings(text).forEach(f -> assertThat(f.place()).isPresent());
  }

  @Property(tries = 200)
  void anyBytesGiveATree(@ForAll byte[] bytes) {
    Checked<PlanTree> parsed = PlanParser.parse(new Source("junk", new String(bytes, StandardCharsets.UTF_8)));
    assertThat(parsed.findings().size()).isLessThanOrEqualTo(Mistakes.MOST_TOLD + 1);
  }

  /** Several mistakes, some of which leave open what the next portion would have to close. */
  @Property(tries = 100)
  void portionsGiveWhatTheWholeGives(
      @ForAll("prefixes") String one, @ForAll("damaged") String other, @ForAll("damaged") String third, @ForAll boolean sound) {
    String text = sound ? String.join("\n", PLANS) + other : one + "\n" + other + "\n" + third;
    Source source = new Source("house.wattle", text);
    Checked<PlanTree> whole = PlanParser.parse(source, text.length() + 1);
    Checked<PlanTree> portions = PlanParser.parse(source, 200);
    assertThat(portions.findings()).isEqualTo(whole.findings());
    assertThat(portions.value()).isEqualTo(whole.value());
  }

  @Test
  void aLongPlanIsReadInPortions() {
    String plan = String.join("\n", Collections.nCopies(40, PLANS.get(0).replace("\r", "")));
    List<Span> portions = TextParts.portions(new Source("long.wattle", plan), 1 << 12);
    assertThat(portions).hasSizeGreaterThan(10);
    assertThat(String.join("", portions.stream().map(Span::text).toList())).isEqualTo(plan);
  }

  @Property(tries = 60)
  void lineEndsMakeNoDifference(@ForAll("damaged") String text) {
    String plain = text.replace("\r", "");
    List<String> lf = findings(plain).stream().map(AnyTextTest::told).toList();
    List<String> crlf = findings(plain.replace("\n", "\r\n")).stream().map(AnyTextTest::told).toList();
    assertThat(crlf).isEqualTo(lf);
  }

  private static String told(Finding finding) {
    return finding.rule() + " " + finding.headline() + finding.place().map(m -> " " + m.span().line() + ":" + m.span().column()).orElse("");
  }
}
