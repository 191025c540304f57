package wattle.live;

import java.util.List;
import java.util.function.Function;
import wattle.emit.media.page.Markup;

/** A list to choose one thing from; where there is only one there is nothing to choose. */
final class Choice {
  private Choice() {}

  static <T> void of(Markup out, String id, String label, List<T> things, Function<T, String> value, Function<T, String> words,
      String chosen) {
    if (things.size() < 2) {
      return;
    }
    out.open("p", "class", "choice").element("label", label, "for", id);
    out.open("select", "id", id, "data-choice", id, "autocomplete", "off");
    for (T thing : things) {
      String name = value.apply(thing);
      if (name.equals(chosen)) {
        out.element("option", words.apply(thing), "value", name, "selected", "selected");
      } else {
        out.element("option", words.apply(thing), "value", name);
      }
    }
    out.close().close();
  }
}
