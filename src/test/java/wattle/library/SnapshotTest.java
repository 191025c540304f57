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
      assertThat(bytes(compiled)).isEqualTo(bytes(written));
      assertThat(compiled.tables().keySet()).containsExactlyElementsOf(written.tables().keySet());
      assertThat(compiled.parts().keySet()).containsExactlyElementsOf(written.parts().keySet());
    }
  }

  /** All that is kept of a library; of a rule that is less than its text has, which {@code explain} reads anew. */
  private static byte[] bytes(Library library) {
    return Snapshot.write(List.of(new Snapshot.Pack("all", "", library)));
  }

  @Test
  void severalPacksJoinAsTheirFilesDo() {
    List<String> packs = List.of("ca-2021", "nowhere", "common", "us-2023");
    Library written = LibraryLoader.load(StandardLibrary.files(packs).value()).value();
    assertThat(bytes(StandardLibrary.library(packs))).isEqualTo(bytes(written));
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
