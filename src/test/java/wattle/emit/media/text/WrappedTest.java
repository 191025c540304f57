package wattle.emit.media.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class WrappedTest {
  @Test
  void proseIsBrokenAtBlanks() {
    assertThat(Wrapped.at("  a shovel goes that deep", 12, "  ")).isEqualTo("  a shovel\n  goes that\n  deep");
    assertThat(Wrapped.at("  a shovel goes that deep", 80, "  ")).isEqualTo("  a shovel goes that deep");
    assertThat(Wrapped.at("  fix: bury it 24 in deep", 14, "       ")).isEqualTo("  fix: bury it\n       24 in\n       deep");
  }

  @Test
  void aLongWordStaysWhole() {
    assertThat(Wrapped.at("see conductor-would-not-survive now", 10, "")).isEqualTo("see\nconductor-would-not-survive\nnow");
  }
}
