package wattle.rules;

import java.util.Collection;
import java.util.List;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.Doubt;
import wattle.model.Doubts;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Room;
import wattle.model.Service;

/** Which properties of a house a mistake in its plan leaves not known: those of the thing itself, and those of what it hangs on. */
final class InDoubt {
  private final Facts facts;
  private final Doubts doubts;

  InDoubt(Facts facts, Doubts doubts) {
    this.facts = facts;
    this.doubts = doubts;
  }

  boolean has(Property property, Object thing) {
    for (Doubt doubt : property.rests()) {
      if (doubts.has(doubt) && (doubt.isOfWhole() || touches(doubt, thing))) {
        return true;
      }
    }
    return false;
  }

  /** Whether it is in doubt if a thing is new, existing or to be removed. */
  boolean ofStatus(Object thing) {
    return doubts.has(Doubt.STATUS) && touches(Doubt.STATUS, thing);
  }

  private boolean touches(Doubt doubt, Object thing) {
    if (thing instanceof Device d) {
      return touchesDevice(doubt, d);
    }
    if (thing instanceof Branch b) {
      return touchesBranch(doubt, b);
    }
    if (thing instanceof RunOf r) {
      return touchesBranch(doubt, r.branch());
    }
    if (thing instanceof Box b) {
      return touchesBox(doubt, b);
    }
    if (thing instanceof Room r) {
      return touchesRoom(doubt, r);
    }
    if (thing instanceof Breaker k) {
      return touchesBreaker(doubt, k);
    }
    if (thing instanceof Panel p) {
      return touchesPanel(doubt, p);
    }
    if (thing instanceof FeederOf f) {
      return touchesFeeder(doubt, f);
    }
    if (thing instanceof Service s) {
      return doubts.has(doubt, s.name()) || doubt == Doubt.SUPPLY;
    }
    return thing instanceof ElectrodeOf e && doubts.has(doubt, e.panel().map(Panel::name).orElse(e.service().name()));
  }

  private boolean touchesDevice(Doubt doubt, Device device) {
    return switch (doubt) {
      case KIT, FIGURES, STATUS -> doubts.has(doubt, device.name());
      case ROOM, CONTENTS -> doubts.has(doubt, device.room());
      case BOX -> doubts.has(doubt, device.box());
      case REACHED -> doubts.has(doubt, device.box()) && facts.branchOf(device).isEmpty();
      default -> facts.branchOf(device).map(b -> touchesBranch(doubt, b)).orElse(true);
    };
  }

  private boolean touchesBranch(Doubt doubt, Branch branch) {
    return switch (doubt) {
      case RATING, HANDLE, LEGS, TRAITS, TARGET -> any(doubt, facts.breakersOf(branch));
      case SUPPLY, PANEL -> facts.panelOf(branch).filter(p -> doubts.has(doubt, p.name())).isPresent();
      case SERVICE -> facts.panelOf(branch).flatMap(facts.house()::serviceOf).filter(s -> doubts.has(doubt, s.name())).isPresent();
      case KIT, FIGURES, ROOM, CONTENTS -> any(doubt, facts.devicesOf(branch));
      case SLOTS -> false;
      default -> doubts.has(doubt, branch.name());
    };
  }

  private boolean touchesBox(Doubt doubt, Box box) {
    return switch (doubt) {
      case WAY -> any(doubt, facts.branchesOf(box));
      case KIT, FIGURES -> any(doubt, facts.devicesOf(box));
      case ROOM, CONTENTS -> doubts.has(doubt, box.room());
      default -> doubts.has(doubt, box.name());
    };
  }

  private boolean touchesRoom(Doubt doubt, Room room) {
    return switch (doubt) {
      case KIT, FIGURES -> any(doubt, facts.devicesOf(room));
      default -> doubts.has(doubt, room.name());
    };
  }

  private boolean touchesBreaker(Doubt doubt, Breaker breaker) {
    return switch (doubt) {
      case RATING, HANDLE, LEGS, TRAITS, TARGET, STATUS -> doubts.has(doubt, breaker.id().toString());
      case PANEL, SUPPLY -> doubts.has(doubt, breaker.id().panel());
      case FEEDER -> breaker.target() instanceof Breaker.Target.ToPanel to && doubts.has(doubt, to.panel());
      default -> breaker.target() instanceof Breaker.Target.ToPanel
          || facts.house().branchOf(breaker).filter(b -> touchesBranch(doubt, b)).isPresent();
    };
  }

  private boolean touchesPanel(Doubt doubt, Panel panel) {
    return switch (doubt) {
      case PANEL, SUPPLY, FEEDER, SLOTS, STATUS -> doubts.has(doubt, panel.name());
      case RATING -> panel.supply() instanceof PanelSupply.FromBreaker from && doubts.has(doubt, from.breaker().toString())
          || any(doubt, panel.breakers());
      case HANDLE, LEGS, TRAITS, TARGET -> any(doubt, panel.breakers());
      case SERVICE -> facts.house().serviceOf(panel).filter(s -> doubts.has(doubt, s.name())).isPresent();
      // What hangs on it, near or far: any of it may be missing from its sums.
      default -> true;
    };
  }

  private boolean touchesFeeder(Doubt doubt, FeederOf feeder) {
    Panel panel = feeder.panel();
    return switch (doubt) {
      case RATING -> panel.supply() instanceof PanelSupply.FromBreaker from && doubts.has(doubt, from.breaker().toString());
      case SERVICE -> touchesPanel(doubt, panel);
      default -> doubts.has(doubt, panel.name());
    };
  }

  private boolean any(Doubt doubt, Collection<?> things) {
    for (Object thing : List.copyOf(things)) {
      if (touches(doubt, thing)) {
        return true;
      }
    }
    return false;
  }
}
