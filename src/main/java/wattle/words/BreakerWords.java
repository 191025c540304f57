package wattle.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.Protection;

/** Breakers in words, alike in every schedule, picture, list and lockout. */
public final class BreakerWords {
  private BreakerWords() {}

  /** As in {@code 20 A 2-pole}; a fuse says so. */
  public static String rating(Breaker breaker) {
    List<String> words = new ArrayList<>();
    words.add(breaker.rating().map(Object::toString).orElse("? A"));
    if (breaker.poles().size() > 1) {
      words.add(breaker.poles().size() + "-pole" + (breaker.handle() == Breaker.Handle.TIED ? " tied" : ""));
    }
    if (breaker.device() == Breaker.Device.FUSE) {
      breaker.base().ifPresent(b -> words.add(b.words()));
      words.add("fuse");
    }
    return String.join(" ", words);
  }

  /** As in {@code 20 A 2-pole breaker}, {@code 30 A fuse}. */
  public static String named(Breaker breaker) {
    return rating(breaker) + (breaker.device() == Breaker.Device.FUSE ? "" : " breaker");
  }

  /** As one orders it: {@code 20 A 1-pole, arc-fault, 10 kA}. */
  public static String ordered(Breaker breaker) {
    List<String> words = new ArrayList<>();
    boolean onePole = breaker.poles().size() == 1 && breaker.device() != Breaker.Device.FUSE;
    words.add(rating(breaker) + (onePole ? " 1-pole" : ""));
    if (breaker.poles().stream().anyMatch(p -> p.slot().half().isPresent())) {
      words.add("half-size");
    }
    if (!breaker.protections().isEmpty()) {
      words.add(protection(breaker));
    }
    breaker.interrupting().ifPresent(i -> words.add(i.toString()));
    if (breaker.interlocked()) {
      words.add("with interlock");
    }
    return String.join(", ", words);
  }

  /** As in {@code arc-fault, ground-fault}; empty for none. */
  public static String protection(Breaker breaker) {
    return String.join(
        ", ",
        breaker.protections().stream().sorted(Comparator.naturalOrder()).map(Protection::word).toList());
  }

  /** What the label of a breaker should say: its own label, or the title of what it feeds. */
  public static String description(House house, Breaker breaker) {
    if (breaker.label().isPresent()) {
      return breaker.label().get();
    }
    return house.branchOf(breaker).map(Branch::title).or(() -> house.panelOf(breaker).map(Panel::title)).orElseGet(() -> target(breaker));
  }

  /** Name of what it feeds, {@code spare}, or {@code later}. */
  public static String target(Breaker breaker) {
    if (breaker.target() instanceof Breaker.Target.ToBranch to) {
      return to.branch();
    }
    if (breaker.target() instanceof Breaker.Target.ToPanel to) {
      return to.panel();
    }
    if (breaker.target() instanceof Breaker.Target.Spare) {
      return "spare";
    }
    if (breaker.target() instanceof Breaker.Target.Later) {
      return "later";
    }
    if (breaker.target() instanceof Breaker.Target.Unknown unknown) {
      return unknown.name() + "?";
    }
    throw new AssertionError(breaker.target());
  }

  /** As in {@code main breaker 200 A}. */
  public static String main(MainDevice main) {
    String kind = switch (main.kind()) {
      case BREAKER -> "main breaker";
      case FUSE -> "main fuses";
      case SWITCH -> "main switch";
      case TRANSFER -> "transfer switch";
      case LUGS -> "main lugs";
    };
    String traits = main.traits().stream().sorted().map(t -> t + " ").collect(Collectors.joining());
    return traits + kind + main.rating().map(r -> " " + r).orElse("");
  }
}
