package wattle.emit.sheet.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.conductors.Conductors;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetText;
import wattle.faults.FaultKind;
import wattle.faults.Faults;
import wattle.read.SourceReader;

class FaultScheduleTest {
  private static Sheet sheet(Compilation plan) {
    Faults faults = Faults.of(plan.house(), plan.library(), Conductors.of(plan.house(), plan.library()));
    return FaultSchedule.of(plan.house(), plan.library(), faults);
  }

  @Test
  void aRowForEveryPanelAndBox() throws SourceReader.Unreadable {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/alder-court/house.wattle"));
    Sheet sheet = sheet(plan);
    int boxes = plan.house().branches().values().stream().mapToInt(b -> b.points().size() - 1).sum();
    assertThat(sheet.rows()).hasSize(boxes + plan.house().panels().size());
    Row lamp = sheet.rows().stream().filter(r -> r.cells().get(2).equals(Cell.of("stair.lamp"))).findFirst().orElseThrow();
    Faults faults = Faults.of(plan.house(), plan.library(), Conductors.of(plan.house(), plan.library()));
    double most = faults.branch("hall").get(3).fault(FaultKind.LINE_NEUTRAL).orElseThrow().mostAmperes();
    Cell.Figure figure = (Cell.Figure) lamp.cells().get(5);
    assertThat(figure.value()).isEqualTo(most);
    assertThat(figure.derivation().orElseThrow().formula()).isEqualTo("U / Z");
    assertThat(lamp.cells().get(3)).isEqualTo(Cell.BLANK);
    assertThat(lamp.cells().get(9)).isEqualTo(Cell.of("P/1, 15 A"));
    assertThat(lamp.cells().get(10)).isEqualTo(Cell.of("0 to 1.2 s"));
    assertThat(SheetText.plain(List.of(sheet))).contains("ask the utility. Figures are an aid: the adopted local code and a licensed"
        + " person decide")
        .doesNotContain("NaN");
  }

  /** The cottage's ways are fused, and its cable has no ground. */
  @Test
  void whatIsNotKnownIsBlank() throws SourceReader.Unreadable {
    Sheet sheet = sheet(new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/cottage/house.wattle")));
    Row lamp = sheet.rows().stream().filter(r -> r.cells().get(2).equals(Cell.of("porch.lamp"))).findFirst().orElseThrow();
    assertThat(lamp.cells().get(5)).isInstanceOf(Cell.Figure.class);
    assertThat(lamp.cells().get(7)).isEqualTo(Cell.BLANK);
    // A plug fuse opens by the points of UL 248-11; below its least fault nothing is known.
    assertThat(lamp.cells().get(10)).isEqualTo(Cell.of("0 to 0.82 s"));
  }
}
