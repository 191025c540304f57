package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compiler;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.text.DisplayWidth;
import wattle.finding.Source;
import wattle.read.SourceReader;

class TerminalTest {
  @Test
  void columnsAreThoseThatMakeSense() {
    assertThat(Terminal.columns("120")).hasValue(120);
    assertThat(Terminal.columns("12")).isEmpty();
    assertThat(Terminal.columns("9999")).isEmpty();
    assertThat(Terminal.columns("wide")).isEmpty();
    assertThat(Terminal.columns(null)).isEmpty();
  }

  /** No line of a finding is wider than the terminal, but for marks with long words and names of files. */
  @Test
  void findingsFitTheTerminal() {
    String text = """
        plan "Narrow"
        use code us-2023
        service main 120/240 V 100 A { source transformer 50 kVA 2 %   run 20 m of 2 Al triplex   earth rods by 6 Cu   no surge-protection }
        """;
    String narrow = new TextFindings(false, Map.of(), OptionalInt.of(60)).render(
        new Compiler(SourceReader.FROM_DISK).compile(new Source("n.wattle", text), Path.of("n.wattle")).findings());
    String wide = new TextFindings(false).render(
        new Compiler(SourceReader.FROM_DISK).compile(new Source("n.wattle", text), Path.of("n.wattle")).findings());
    assertThat(narrow.lines().filter(l -> !l.contains("^") && !l.contains("-- ") && !l.contains("[")))
        .isNotEmpty().allSatisfy(l -> assertThat(DisplayWidth.of(l)).as(l).isLessThanOrEqualTo(60));
    assertThat(narrow.replaceAll("\\s+", "")).contains("surgeprotection");
    assertThat(wide.lines().mapToInt(DisplayWidth::of).max().orElse(0)).isGreaterThan(60);
  }
}
