package wattle.questions;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import wattle.derivation.Derivation;
import wattle.lockout.Handle;
import wattle.lockout.Lockout;
import wattle.lockout.Place;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.DeviceKind;

/** What feeds what, what a switch works, which handles to open, and how full a box is. */
final class CircuitQuestions {
  private final Asked asked;

  CircuitQuestions(Asked asked) {
    this.asked = asked;
  }

  List<QuestionKind> kinds() {
    return List.of(
        new QuestionKind(Level.EASY, feeds()), new QuestionKind(Level.EASY, switches()), new QuestionKind(Level.MEDIUM, handles()),
        new QuestionKind(Level.MEDIUM, boxes()));
  }

  private List<Supplier<Optional<Question>>> feeds() {
    List<Supplier<Optional<Question>>> candidates = new ArrayList<>();
    for (Device device : asked.house().devices().values()) {
      List<Branch> branches = asked.house().branches().values().stream()
          .filter(b -> b.points().stream().anyMatch(p -> p.devices().contains(device.name()))).toList();
      if (branches.size() == 1 && device.kind().family() != DeviceKind.Family.JUNCTION) {
        candidates.add(() -> feeds(device, branches.get(0)));
      }
    }
    return candidates;
  }

  private Optional<Question> feeds(Device device, Branch branch) {
    List<BreakerId> ids = branch.hots().stream().map(BranchHot::breaker).distinct().toList();
    List<Breaker> breakers = ids.stream().flatMap(id -> asked.house().breaker(id).stream()).toList();
    if (breakers.isEmpty() || breakers.size() != ids.size()) {
      return Optional.empty();
    }
    boolean fuses = breakers.stream().allMatch(b -> b.device() == Breaker.Device.FUSE);
    String all = breakers.stream().map(asked::breaker).collect(Collectors.joining(" and "));
    return Optional
        .of(Question.read("feeds", Level.EASY, "Which " + (fuses ? "fuse" : "breaker") + " protects the circuit of " + asked.the(device)
            + "?", all.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + all.substring(1) + ", on " + asked.branch(branch) + "."));
  }

  private List<Supplier<Optional<Question>>> switches() {
    return asked.house().devices().values().stream().filter(d -> !d.controls().isEmpty())
        .<Supplier<Optional<Question>>>map(d -> () -> Optional.of(controls(d))).toList();
  }

  private Question controls(Device device) {
    List<Device> others = asked.house().devices().values().stream()
        .filter(d -> !d.name().equals(device.name()) && d.controls().stream().anyMatch(device.controls()::contains)).toList();
    String also = others.isEmpty()
        ? "No other switch controls it."
        : "It is also controlled from " + others.stream().map(Device::name).collect(Collectors.joining(" and ")) + ".";
    return Question.read("switch", Level.EASY, "What does " + asked.the(device) + " switch, and from where else can that be switched?",
        "It switches " + String.join(", ", device.controls()) + ".", also);
  }

  private List<Supplier<Optional<Question>>> handles() {
    return asked.house().boxes().values().stream().filter(b -> !b.devices().isEmpty())
        .<Supplier<Optional<Question>>>map(b -> () -> handles(b)).toList();
  }

  private Optional<Question> handles(Box box) {
    Lockout lockout = asked.plan().figures().lockout(new Place.AtBox(box.name()));
    if (!lockout.unknown().isEmpty() || lockout.handles().isEmpty()) {
      return Optional.empty();
    }
    List<String> answer = new ArrayList<>();
    for (Handle handle : lockout.handles()) {
      answer
          .add(handle.part().tag() + ", " + handle.where() + ": " + handle.what() + ". It " + String.join("; it ", handle.reasons()) + ".");
    }
    answer.addAll(lockout.warnings());
    if (!lockout.staysLive().isEmpty()) {
      answer
          .add("What stays live near it: " + lockout.staysLive().stream().map(Lockout.Live::what).collect(Collectors.joining("; ")) + ".");
    }
    answer.add("Lock the handles, and prove dead with a tester that is proved before and after.");
    return Optional.of(new Question("handles", Level.MEDIUM, "You are going to open the box " + box.name()
        + ". Which handles must be open and locked before that?", answer, List.of(), List.of()));
  }

  private List<Supplier<Optional<Question>>> boxes() {
    return asked.house().boxes().values().stream().filter(b -> b.volume().isPresent())
        .<Supplier<Optional<Question>>>map(b -> () -> fill(b)).toList();
  }

  private Optional<Question> fill(Box box) {
    Optional<Derivation> needed = asked.plan().figures().boxFill().needed(box);
    return needed.map(n -> {
      double has = box.volume().orElseThrow().si();
      String verdict = n.si() <= has * (1 + 1e-9)
          ? "That is within the " + box.volume().get() + " that it has."
          : "The box has only "
              + box.volume().get() + ".";
      return new Question("box", Level.MEDIUM,
          "The box " + box.name() + " has " + box.volume().get() + ". How much volume do its contents need?",
          List.of(Asked.shown(n) + ".", verdict), List.of(n), List.of());
    });
  }
}
