package wattle.trials;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import wattle.finding.Checked;
import wattle.library.Library;
import wattle.memo.Once;
import wattle.memo.OnceEach;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Trial;

/**
 * The trials of a plan, each solved once, when it is first asked for; threads may share it. A result that nobody holds is let
 * go where memory is short.
 */
public final class SolvedTrials {
  private final House house;
  private final Once<Trials> trials;
  private final OnceEach<Optional<String>, Checked<TrialResult>> solved;
  private final Consumer<String> told;

  /** Of a house on its own, of which nothing else is asked. */
  public SolvedTrials(House house, Library library) {
    this(house, library, solved -> {});
  }

  /** @param told hears what is being solved, each time that something is: {@code trial NAME} or {@code stated house} */
  public SolvedTrials(House house, Library library, Consumer<String> told) {
    this.house = house;
    this.told = told;
    trials = new Once<>(() -> new Trials(house, library));
    solved = new OnceEach<>(name -> name.map(this::named).orElseGet(this::asStated));
  }

  private Checked<TrialResult> named(String name) {
    told.accept("trial " + name);
    return trials.get().run(house.trials().get(name));
  }

  private Checked<TrialResult> asStated() {
    told.accept("stated house");
    return new Checked<>(trials.get().stated(), List.of());
  }

  /** The house as stated: everything on at once. */
  public TrialResult stated() {
    return solved.get(Optional.empty()).value();
  }

  /** A trial of the plan, with findings of events that cannot happen in this house. */
  public Checked<TrialResult> result(Trial trial) {
    if (house.trials().get(trial.name()) != trial) {
      throw new IllegalArgumentException("no trial of this plan: " + trial.name());
    }
    return solved.get(Optional.of(trial.name()));
  }

  /**
   * Events that no trial of the plan holds as they stand; solved anew at each call, and not kept.
   *
   * @param name of the trial that they add to; empty where there is none
   */
  public Checked<TrialResult> result(String name, List<Event> events) {
    told.accept("events");
    return trials.get().run(name, events);
  }

  /** The same with every stated load on, unless an event says otherwise. */
  public Checked<TrialResult> statedWith(List<Event> events) {
    told.accept("events");
    return trials.get().statedWith(events);
  }
}
