package wattle.emit.document.lockout;

import java.util.List;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.lockout.Handle;
import wattle.lockout.Lockout;
import wattle.quantity.Quantity;

/** A lockout as a page to print: handles and warnings first, since those are what must not be overlooked. */
public final class LockoutPage {
  private static final int MOST_TABLES = 2;

  private static final String STYLE = """
      body { line-height: 1.22; }
      .handle { font-size: 12pt; }
      .tag { font-size: 15pt; font-weight: bold; white-space: nowrap; }
      .box { width: 1.6em; }
      .beware li { font-weight: bold; }
      .doubt { border: 3pt double #000; padding: 0.3em 0.6em; font-weight: bold; }
      .sign td { height: 1.7em; width: 25%; }
      .sign .label { font-size: 9pt; }
      """;

  private LockoutPage() {}

  /** @param paper {@code letter} or {@code A4} */
  public static Page of(Lockout lockout, SheetHead head, String paper) {
    Markup body = new Markup();
    body.element("h1", "Lockout: " + lockout.place().text());
    body.element("p", lockout.title() + " \u2014 plan " + head.plan());
    body.element("p", Page.CAUTION, "class", "caution small");
    if (!head.doubt().isEmpty()) {
      body.element("p", head.doubt(), "class", "doubt");
    }
    lockout.unknown().forEach(u -> body.element("p", "Not complete: " + u + ".", "class", "doubt"));
    handles(body, lockout.handles());
    section(body, "Beware", lockout.warnings(), "beware");
    section(body, "Stays live", lockout.staysLive().stream().map(l -> l.what() + " (" + l.near() + "): from " + l.from()).toList(),
        "small");
    section(body, "Also goes dead", lockout.goesDead().stream().map(d -> d.what() + ": " + String.join("; ", d.devices())).toList(),
        "small");
    proofs(body, lockout.proofs());
    body.element("h2", "Sign");
    body.open("table", "class", "sign together");
    List<String> lines = LockoutText.Lines.SIGN_OFF;
    for (int i = 0; i < lines.size(); i += 2) {
      body.open("tr");
      lines.subList(i, Math.min(lines.size(), i + 2)).forEach(l -> body.element("td", l, "class", "label").element("td", ""));
      body.close();
    }
    body.close();
    return new Page("Lockout: " + lockout.place().text(), paper, STYLE, body.toString());
  }

  private static void handles(Markup body, List<Handle> handles) {
    body.element("h2", "Open and lock, all of them");
    if (handles.isEmpty()) {
      body.element("p", "The plan shows none: treat everything here as live.", "class", "doubt");
      return;
    }
    body.open("table", "class", "handle");
    body.row("th", "Done", "Handle", "Where and what", "Why");
    for (Handle handle : handles) {
      body.open("tr").element("td", "\u2610", "class", "box").element("td", handle.part().tag(), "class", "tag");
      body.element("td", handle.where() + ": " + handle.what());
      body.element("td", String.join("; ", handle.reasons()), "class", "small").close();
    }
    body.close();
  }

  private static void section(Markup body, String title, List<String> items, String style) {
    if (!items.isEmpty()) {
      body.element("h2", title).list(items, "class", style);
    }
  }

  private static void proofs(Markup body, List<Lockout.Proof> proofs) {
    body.element("h2", "Prove dead");
    body.element("p", "Prove the tester on a live source, measure every line, prove the tester again.", "class", "small");
    if (proofs.size() > MOST_TABLES) {
      shortProofs(body, proofs);
      return;
    }
    for (Lockout.Proof proof : proofs) {
      body.open("table", "class", "small");
      body.row("th", proof.at() + ": between", "and", "With all on, V", "Must read", "Read");
      for (Lockout.Reading reading : proof.readings()) {
        body.row("td", reading.from(), reading.to(), live(reading), "0 V", "");
      }
      body.close();
      if (!proof.conductors().isEmpty()) {
        body.element("p", "In it: " + String.join("; ", proof.conductorTexts()) + ".", "class",
            "small");
      }
    }
  }

  /** One row a box: a room of ten boxes must not become a booklet. */
  private static void shortProofs(Markup body, List<Lockout.Proof> proofs) {
    body.open("table", "class", "small");
    body.row("th", "Box", "Measure between, all of them", "Must read", "Read");
    for (Lockout.Proof proof : proofs) {
      body.row("td", proof.at(), String.join("; ", proof.readings().stream().map(r -> r.from() + " and " + r.to()).toList()), "0 V", "");
    }
    body.close();
  }

  private static String live(Lockout.Reading reading) {
    return reading.liveVolts().map(v -> v == 0 ? "0 (proves nothing by itself)" : Quantity.plain(v, 3)).orElse("not known");
  }
}
