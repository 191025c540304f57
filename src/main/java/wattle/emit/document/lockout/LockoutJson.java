package wattle.emit.document.lockout;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import wattle.emit.media.page.Page;
import wattle.emit.media.text.Json;
import wattle.lockout.Handle;
import wattle.lockout.Lockout;

/** A lockout for programs. */
public final class LockoutJson {
  private static final int VERSION = 1;

  private LockoutJson() {}

  /** The document, ending in a line end. */
  public static String render(Lockout lockout, SheetHead head) {
    ObjectNode root = Json.document("wattle-lockout", VERSION).put("caution", Page.CAUTION);
    root.put("plan", head.plan()).put("planErrors", head.errors());
    root.put("place", lockout.place().text()).put("title", lockout.title());
    lockout.unknown().forEach(root.putArray("unknown")::add);
    ArrayNode handles = root.putArray("handles");
    lockout.handles().forEach(h -> handle(handles.addObject(), h));
    lockout.warnings().forEach(root.putArray("warnings")::add);
    ArrayNode live = root.putArray("staysLive");
    lockout.staysLive().forEach(l -> live.addObject().put("what", l.what()).put("from", l.from()).put("near", l.near()));
    ArrayNode dead = root.putArray("goesDead");
    for (Lockout.Dead each : lockout.goesDead()) {
      each.devices().forEach(dead.addObject().put("what", each.what()).putArray("devices")::add);
    }
    ArrayNode proofs = root.putArray("proofs");
    lockout.proofs().forEach(p -> proof(proofs.addObject(), p));
    return Json.text(root);
  }

  private static void handle(ObjectNode node, Handle handle) {
    node.put("tag", handle.part().tag()).put("where", handle.where()).put("what", handle.what());
    handle.reasons().forEach(node.putArray("reasons")::add);
  }

  private static void proof(ObjectNode node, Lockout.Proof proof) {
    node.put("at", proof.at());
    ArrayNode conductors = node.putArray("conductors");
    for (Lockout.Conductor conductor : proof.conductors()) {
      ObjectNode each = conductors.addObject().put("branch", conductor.branch()).put("color", conductor.color())
          .put("role", conductor.role()).put("reidentified", conductor.reidentified());
      conductor.cables().forEach(each.putArray("cables")::add);
    }
    ArrayNode readings = node.putArray("readings");
    for (Lockout.Reading reading : proof.readings()) {
      ObjectNode each = readings.addObject().put("from", reading.from()).put("to", reading.to());
      reading.liveVolts().ifPresent(v -> each.put("liveVolts", v));
    }
  }
}
