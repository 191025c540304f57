package wattle.emit.document.lockout;

import java.util.List;
import java.util.stream.Collectors;
import wattle.emit.media.page.Page;
import wattle.emit.media.text.VisibleText;
import wattle.lockout.Handle;
import wattle.lockout.Lockout;
import wattle.quantity.Quantity;

/** A lockout as plain text. */
public final class LockoutText {
  private LockoutText() {}

  /** The sheet, ending in a line end. */
  public static String render(Lockout lockout, SheetHead head) {
    StringBuilder out = new StringBuilder();
    line(out, "LOCKOUT SHEET: " + lockout.place().text());
    line(out, lockout.title() + "; plan " + head.plan());
    if (!head.doubt().isEmpty()) {
      line(out, "! " + head.doubt());
    }
    lockout.unknown().forEach(u -> line(out, "! NOT COMPLETE: " + u));
    section(out, "OPEN AND LOCK, ALL OF THEM");
    for (Handle handle : lockout.handles()) {
      line(out, "[ ] " + handle.part().tag() + "  " + handle.where() + ": " + handle.what());
      handle.reasons().forEach(r -> line(out, "      " + r));
    }
    if (lockout.handles().isEmpty()) {
      line(out, "the plan shows none: treat everything here as live");
    }
    list(out, "BEWARE", lockout.warnings());
    list(out, "STAYS LIVE", lockout.staysLive().stream().map(LockoutText::live).toList());
    list(out, "ALSO GOES DEAD", lockout.goesDead().stream().map(d -> d.what() + ": " + String.join("; ", d.devices())).toList());
    section(out, "PROVE DEAD (prove the tester on a live source before and after)");
    lockout.proofs().forEach(p -> proof(out, p));
    section(out, "SIGN");
    Lines.SIGN_OFF.forEach(l -> line(out, l + ": ____________________"));
    line(out, "");
    line(out, Page.CAUTION);
    return out.toString();
  }

  private static String live(Lockout.Live live) {
    return live.what() + " (" + live.near() + "): from " + live.from();
  }

  private static void proof(StringBuilder out, Lockout.Proof proof) {
    line(out, proof.at());
    proof.conductorTexts().forEach(c -> line(out, "    conductor: " + c));
    for (Lockout.Reading reading : proof.readings()) {
      line(out, "    [ ] " + reading.from() + " to " + reading.to() + ": 0 V" + Lines.whenLive(reading));
    }
  }

  private static void list(StringBuilder out, String title, List<String> items) {
    if (!items.isEmpty()) {
      section(out, title);
      out.append(items.stream().map(i -> "- " + VisibleText.of(i) + "\n").collect(Collectors.joining()));
    }
  }

  private static void section(StringBuilder out, String title) {
    out.append('\n').append(title).append('\n');
  }

  private static void line(StringBuilder out, String text) {
    out.append(VisibleText.of(text)).append('\n');
  }

  /** Wordings that both sheets share. */
  static final class Lines {
    static final List<String> SIGN_OFF = List.of("Worker, lock number", "Opened and locked, date and time", "Tester proved before / after",
        "Dead, every line above", "Closed again by, date and time", "All clear, lock removed by");

    /** What a reading would be with everything on, so that a tester that shows nothing can be told from a dead box. */
    static String whenLive(Lockout.Reading reading) {
      if (reading.liveVolts().isEmpty()) {
        return "; with everything on: not known";
      }
      double volts = reading.liveVolts().get();
      return volts == 0
          ? "; reads 0 V even when live, so it proves nothing by itself"
          : "; with everything on: " + Quantity.plain(volts, 3) + " V";
    }

    private Lines() {}
  }
}
