package wattle.live;

import wattle.model.Event;

/**
 * Which event it is, whatever its figure: the beginning of its line in the notation. Two events with one key are about the
 * same thing, and a control is pressed where a line with its key stands.
 */
final class EventKey {
  private EventKey() {}

  static String of(Event event) {
    if (event instanceof Event.ConductorOpen open) {
      return open(open.conductor(), open.branch()) + open.at().map(a -> " at " + a).orElse("");
    }
    if (event instanceof Event.FeederOpen open) {
      return open(open.conductor(), open.panel());
    }
    if (event instanceof Event.BreakerOpen open) {
      return "open breaker " + open.breaker();
    }
    if (event instanceof Event.ServiceNeutralOpen) {
      return "open service neutral";
    }
    if (event instanceof Event.MainOpen open) {
      return openMain(open.panel());
    }
    if (event instanceof Event.SupplyLost lost) {
      return lose(lost.service());
    }
    if (event instanceof Event.Transferred transferred) {
      return transfer(transferred.panel(), transferred.source().orElse(transferred.off() ? "off" : "utility"));
    }
    if (event instanceof Event.Giving giving) {
      return gives(giving.device());
    }
    if (event instanceof Event.JointLoose loose) {
      return loosen(loose.conductor(), loose.at());
    }
    if (event instanceof Event.GroundLifted lifted) {
      return lift(lifted.at());
    }
    if (event instanceof Event.Faulted fault) {
      return fault(fault.from(), fault.to(), fault.at());
    }
    if (event instanceof Event.Moved moved) {
      return "move " + moved.branch() + " to";
    }
    if (event instanceof Event.Reversed swap) {
      return swap(swap.at());
    }
    if (event instanceof Event.Drawing drawing) {
      return draws(drawing.device(), drawing.part());
    }
    if (event instanceof Event.PanelDrawing drawing) {
      return draws(drawing.panel(), "");
    }
    if (event instanceof Event.Turned turned) {
      return turned.device() + (turned.on() ? " on" : " off");
    }
    throw new AssertionError(event);
  }

  static String open(Event.Conductor conductor, String branch) {
    return "open " + word(conductor) + " of " + branch;
  }

  static String openMain(String panel) {
    return "open main " + panel;
  }

  static String lose(String service) {
    return "lose " + service;
  }

  static String transfer(String panel, String to) {
    return "transfer " + panel + " to " + to;
  }

  static String gives(String device) {
    return device + " gives";
  }

  static String loosen(Event.Conductor conductor, String at) {
    return "loosen " + word(conductor) + " at " + at + " by";
  }

  static String lift(String at) {
    return "lift ground at " + at;
  }

  static String fault(Event.Conductor from, Event.Conductor to, String at) {
    return "fault " + word(from) + " to " + word(to) + " at " + at;
  }

  static String swap(String at) {
    return "swap at " + at;
  }

  static String draws(String device, String part) {
    return device + (part.isEmpty() ? "" : "." + part) + " draws";
  }

  /** As the notation names it; of three hots it names two. */
  static String word(Event.Conductor conductor) {
    return switch (conductor) {
      case HOT -> "hot";
      case HOT_2, HOT_3 -> "other-hot";
      case NEUTRAL -> "neutral";
      case GROUND -> "ground";
    };
  }
}
