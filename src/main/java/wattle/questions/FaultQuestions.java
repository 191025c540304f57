package wattle.questions;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import wattle.model.Branch;
import wattle.model.Leg;
import wattle.trials.TrialResult;

/** Voltage that is lost on the way, and what happens on a fault, a loose joint, and an open service neutral. */
final class FaultQuestions {
  private static final String JOINT = "0.2 ohm";

  private final Asked asked;
  private final Outlets outlets;

  FaultQuestions(Asked asked) {
    this.asked = asked;
    outlets = new Outlets(asked);
  }

  List<QuestionKind> kinds() {
    List<Branch> all = List.copyOf(asked.house().branches().values());
    return List.of(
        kind(Level.MEDIUM, all, this::drop), kind(Level.HARD, all, this::joint), kind(Level.HARD, all, this::fault),
        new QuestionKind(Level.HARD, serviceNeutral()));
  }

  private static QuestionKind kind(Level level, List<Branch> branches, Function<Branch, Optional<Question>> maker) {
    return new QuestionKind(level, branches.stream().<Supplier<Optional<Question>>>map(b -> () -> maker.apply(b)).toList());
  }

  private Optional<String> last(Branch branch) {
    List<String> all = outlets.toNeutral(branch);
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
  }

  private Optional<Question> drop(Branch branch) {
    return last(branch).flatMap(outlet -> {
      List<String> events = List.of(outlet + " draws " + Asked.plain(asked.load(branch, outlet)) + " A");
      return asked.run(events).flatMap(r -> Outlets.at(r, outlet)).filter(o -> !o.floating()).map(o -> new Question("drop", Level.MEDIUM,
          "Only " + asked.the(outlet) + " is in use and draws " + Asked.plain(asked.load(branch, outlet))
              + " A. What voltage does it get, and how much is lost between the source and it?",
          List.of(Asked.shown(o.volts()) + " of " + Asked.shown(o.nominal()) + ".", "The drop is " + Asked.shown(o.fall()) + "."),
          List.of(o.volts(), o.fall()), events));
    });
  }

  private Optional<Question> joint(Branch branch) {
    return last(branch).flatMap(outlet -> {
      String box = asked.house().devices().get(deviceOf(outlet)).box();
      List<String> events = List.of(outlet + " draws " + Asked.plain(asked.load(branch, outlet)) + " A",
          "loosen neutral at " + box + " by " + JOINT);
      return asked.run(events).flatMap(r -> r.joints().stream().findFirst()).map(j -> new Question("loose joint", Level.HARD,
          "The neutral joint in the box " + box + " is loose and has 0.2 Ω, and " + asked.the(outlet) + " draws "
              + Asked.plain(asked.load(branch, outlet))
              + " A. How much heat does the joint give off, and will the breaker or fuse trip?",
          List.of(Asked.shown(j.watts()) + ", in a spot the size of a screw.",
              "No: the current is that of the load, below the rating. Overcurrent protection does not see a loose joint."),
          List.of(j.watts()), events));
    });
  }

  private Optional<Question> fault(Branch branch) {
    return last(branch).flatMap(outlet -> {
      String device = deviceOf(outlet);
      List<String> events = List.of("fault hot to ground at " + device);
      Optional<TrialResult> result = asked.run(events);
      Optional<TrialResult.FaultReading> fault = result.flatMap(r -> r.faults().stream().findFirst()).filter(f -> f.amps().si() > 0);
      if (fault.isEmpty()) {
        return Optional.empty();
      }
      String opens = result.get().opens(device);
      return Optional.of(new Question("fault", Level.HARD,
          "The hot touches the grounded metal of " + asked.the(outlet) + ". How much current flows, and what opens?",
          List.of(Asked.shown(fault.get().amps()) + ".",
              opens.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + opens.substring(1) + "."),
          List.of(fault.get().amps()), events));
    });
  }

  /** Two loads on different legs of one service. */
  private List<Supplier<Optional<Question>>> serviceNeutral() {
    if (asked.house().services().size() != 1) {
      return List.of();
    }
    List<Branch> ones = new ArrayList<>();
    List<Branch> others = new ArrayList<>();
    for (Branch branch : asked.house().branches().values()) {
      Optional<Leg> leg = branch.hots().size() == 1 ? branch.hots().get(0).leg() : Optional.empty();
      leg.ifPresent(l -> (l == Leg.A ? ones : others).add(branch));
    }
    List<Supplier<Optional<Question>>> candidates = new ArrayList<>();
    for (int i = 0; i < Math.min(ones.size(), others.size()); i++) {
      Branch one = ones.get(i);
      Branch other = others.get(i);
      candidates.add(() -> serviceNeutral(one, other));
    }
    return candidates;
  }

  private Optional<Question> serviceNeutral(Branch one, Branch other) {
    Optional<String> first = last(one);
    Optional<String> second = last(other);
    if (first.isEmpty() || second.isEmpty()) {
      return Optional.empty();
    }
    List<String> events = List.of(first.get() + " draws 1200 W impedance", second.get() + " draws 60 W impedance", "open service neutral");
    Optional<TrialResult> result = asked.run(events);
    Optional<TrialResult.OutletReading> here = result.flatMap(r -> Outlets.at(r, first.get())).filter(o -> !o.floating());
    Optional<TrialResult.OutletReading> there = result.flatMap(r -> Outlets.at(r, second.get())).filter(o -> !o.floating());
    if (here.isEmpty() || there.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new Question("open service neutral", Level.HARD,
        asked.the(first.get()).replaceFirst("^t", "T") + " runs a heater of 1200 W on one leg, and " + asked.the(second.get())
            + " a lamp of 60 W on another, when the neutral of the service opens. What voltage does each get?",
        List.of(
            Asked.shown(here.get().volts()) + " at " + first.get() + ", " + Asked.shown(there.get().volts()) + " at " + second.get() + ".",
            "The grounding electrodes are a poor substitute for the neutral: their current depends on their resistance."),
        List.of(here.get().volts(), there.get().volts()), events));
  }

  private String deviceOf(String outlet) {
    return asked.house().devices().containsKey(outlet) ? outlet : outlet.substring(0, outlet.lastIndexOf('.'));
  }
}
