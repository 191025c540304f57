package wattle.library;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.model.DeviceKind;

/** What the build made of the standard library is what its text says. */
class SnapshotTest {
  @Test
  void thePacksAreAsWritten() {
    assertThat(StandardLibrary.packNames()).isEqualTo(StandardLibrary.writtenNames()).contains("common").hasSizeGreaterThan(2);
    for (String pack : StandardLibrary.packNames()) {
      Library written = LibraryLoader.load(StandardLibrary.files(List.of(pack)).value()).value();
      Library compiled = StandardLibrary.library(List.of(pack));
      assertThat(compiled.packs()).isEqualTo(written.packs());
      assertThat(compiled.parts()).isEqualTo(written.parts()).hasSizeGreaterThan(50);
      assertThat(compiled.cables()).isEqualTo(written.cables()).hasSizeGreaterThan(10);
      assertThat(compiled.tables()).isEqualTo(written.tables()).hasSizeGreaterThan(10);
      assertThat(compiled.limits()).isEqualTo(written.limits());
      assertThat(compiled.tables().keySet()).containsExactlyElementsOf(written.tables().keySet());
      assertThat(compiled.parts().keySet()).containsExactlyElementsOf(written.parts().keySet());
    }
  }

  @Test
  void severalPacksJoinAsTheirFilesDo() {
    List<String> packs = List.of("ca-2021", "nowhere", "common", "us-2023");
    Library written = LibraryLoader.load(StandardLibrary.files(packs).value()).value();
    assertThat(StandardLibrary.library(packs)).isEqualTo(written);
    assertThat(StandardLibrary.library(packs).tables().keySet()).containsExactlyElementsOf(written.tables().keySet());
  }

  @Test
  void thingsAreMadeOnce() {
    DeviceKind first = StandardLibrary.library(List.of("common")).part("receptacle").orElseThrow();
    assertThat(StandardLibrary.library(List.of("us-2023")).part("receptacle").orElseThrow()).isSameAs(first);
    assertThat(StandardLibrary.library(List.of("common")).part("no such thing")).isEmpty();
  }

  @Test
  void thePacksAreWrittenTheSameEveryTime() {
    assertThat(Snapshot.write(SnapshotFile.packs())).isEqualTo(Snapshot.write(SnapshotFile.packs()));
  }
}
