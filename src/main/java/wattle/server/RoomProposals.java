package wattle.server;

import org.eclipse.lsp4j.CompletionItemKind;
import wattle.model.House;

/** Within a room: kinds of device, what they control, where they are. */
final class RoomProposals {
  private final Question question;
  private final CursorPlace place;
  private final Proposals proposals;
  private final NameProposals names;

  RoomProposals(Question question, CursorPlace place, Proposals proposals, NameProposals names) {
    this.question = question;
    this.place = place;
    this.proposals = proposals;
    this.names = names;
  }

  void propose() {
    House house = question.analysis().house();
    if (place.isAtStart()) {
      proposals.words("a box with devices in it", "box");
    } else if (place.isAfterNumber()) {
      proposals.units("W", "VA", "kW", "A", "in3", "m", "ft");
    } else if (place.last().equals("for") || place.last().equals(",")) {
      controlled(house);
    } else if (place.last().equals("at")) {
      house.devices().values().stream().flatMap(d -> d.location().stream()).distinct()
          .forEach(l -> proposals.words("where it is", l));
    } else if (place.count(":") > 0) {
      kinds();
      names.parameters();
      proposals.words(
          "of a device", "for", "at", "on", "tamper-resistant", "weather-resistant", "ground-fault", "arc-fault",
          "protects onward", "hardwired", "continuous");
    }
  }

  private void kinds() {
    question
        .analysis()
        .compilation()
        .library()
        .parts()
        .values()
        .forEach(p -> proposals.add(p.name(), p.family().name().toLowerCase(java.util.Locale.ROOT), CompletionItemKind.Struct));
  }

  /** Of this room by one word, of others by room and name. */
  private void controlled(House house) {
    String room = place.blockName() + ".";
    house.devices().values().stream()
        .filter(d -> d.name().startsWith(room))
        .forEach(d -> proposals.add(d.name().substring(room.length()), d.kind().name(), CompletionItemKind.Field));
    names.devices();
  }
}
