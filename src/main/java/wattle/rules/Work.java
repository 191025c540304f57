package wattle.rules;

import java.util.Optional;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.Panel;
import wattle.model.Raceway;
import wattle.model.Room;
import wattle.model.Service;
import wattle.model.Status;

/**
 * Whom a rule binds. A danger is one at any age; what an edition of a code requires binds what is installed, altered or
 * extended now. What is to be removed no rule binds.
 *
 * @param all whether existing work is bound as well as new
 * @param which of a rule for new work, what makes it new work; absent where the thing itself is to be new
 */
record Work(boolean all, Optional<Term> which) {
  static final Work ALL = new Work(true, Optional.empty());

  /**
   * Status of a thing that rules are about; a feeder has that of the panel that it feeds, a run its own. Absent for what is
   * neither new nor old as a whole: the plan, a dwelling, wiring.
   */
  static Optional<Status> statusOf(Object thing) {
    if (thing instanceof Device d) {
      return Optional.of(d.status());
    }
    if (thing instanceof RunOf r) {
      return Optional.of(r.section().status());
    }
    if (thing instanceof Branch b) {
      return Optional.of(b.status());
    }
    if (thing instanceof Box b) {
      return Optional.of(b.status());
    }
    if (thing instanceof Breaker b) {
      return Optional.of(b.status());
    }
    if (thing instanceof Room r) {
      return Optional.of(r.status());
    }
    if (thing instanceof Panel p) {
      return Optional.of(p.status());
    }
    if (thing instanceof FeederOf f) {
      return Optional.of(f.panel().status());
    }
    if (thing instanceof Service s) {
      return Optional.of(s.status());
    }
    if (thing instanceof Raceway r) {
      return Optional.of(r.status());
    }
    return thing instanceof ElectrodeOf e ? Optional.of(e.electrode().status()) : Optional.empty();
  }

  /** Whether things of a kind have a status of their own. */
  static boolean hasStatus(Kind kind) {
    return kind != Kind.HOUSE && kind != Kind.DWELLING && kind != Kind.WIRING;
  }

  /** Whether a rule may bind a thing as far as its own status goes. */
  boolean mayBind(Facts facts, Object thing) {
    Optional<Status> status = statusOf(thing);
    return status.isEmpty() || status.get() != Status.TO_REMOVE
        && (all || which.isPresent() || facts.isNew(status.get()) || facts.isStatusInDoubt(thing));
  }

  /** Whether a rule binds the thing that it has named, which its status allows; null where the plan does not tell. */
  Object binds(Facts facts, Object[] named) {
    if (which.isPresent()) {
      return which.get().of(facts, named);
    }
    return !all && facts.isStatusInDoubt(named[0]) ? null : Boolean.TRUE;
  }
}
