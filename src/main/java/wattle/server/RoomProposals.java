package wattle.server;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.lsp4j.CompletionItemKind;
import wattle.model.House;
import wattle.syntax.Lexeme;
import wattle.syntax.LexemeReader;

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
    Set<String> own = new LinkedHashSet<>();
    house.devices().values().stream()
        .filter(d -> d.name().startsWith(room))
        .forEach(d -> {
          own.add(d.name().substring(room.length()));
          proposals.add(d.name().substring(room.length()), d.kind().name(), CompletionItemKind.Field);
        });
    written().stream().filter(own::add).forEach(name -> proposals.add(name, "of this room", CompletionItemKind.Field));
    names.devices();
  }

  /** Devices that the room names in the text: those of a room in a pattern are in the house by the names of its placements alone. */
  private List<String> written() {
    Optional<Lexeme> room = place.heads().stream().filter(h -> !h.isEmpty() && h.get(0).text().equals("room")).map(h -> h.get(0))
        .reduce((outer, inner) -> inner);
    if (room.isEmpty()) {
      return List.of();
    }
    List<String> devices = new ArrayList<>();
    Optional<Lexeme> before = Optional.empty();
    int depth = 0;
    for (Lexeme lexeme : LexemeReader.read(question.source()).value()) {
      if (lexeme.span().start() <= room.get().span().start()) {
        continue;
      }
      depth += lexeme.text().equals("{") ? 1 : lexeme.text().equals("}") ? -1 : 0;
      if (depth == 0 && lexeme.text().equals("}")) {
        break;
      }
      if (lexeme.text().equals(":")) {
        before.map(Lexeme::text).ifPresent(devices::add);
      }
      before = Optional.of(lexeme);
    }
    return devices;
  }
}
