package wattle.begin;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Services a dwelling usually has, with the conductors of the drop and of the electrodes.
 *
 * <p>Conductors: NFPA 70-2023 table 310.12(A), aluminum; electrode conductors: table 250.66, copper.
 */
public enum ServiceSize {
  A100(100, 125, "2 Al triplex", "8 Cu"), A125(125, 125, "1/0 Al triplex", "8 Cu"), A150(150, 200, "2/0 Al triplex", "6 Cu"), A200(200, 225,
      "4/0 Al triplex", "4 Cu"), A225(225, 225, "250 kcmil Al triplex", "4 Cu"), A400(400, 400, "600 kcmil Al triplex", "1/0 Cu");

  private final int amperes;
  private final int bus;
  private final String drop;
  private final String electrode;

  ServiceSize(int amperes, int bus, String drop, String electrode) {
    this.amperes = amperes;
    this.bus = bus;
    this.drop = drop;
    this.electrode = electrode;
  }

  public int amperes() {
    return amperes;
  }

  int bus() {
    return bus;
  }

  String drop() {
    return drop;
  }

  String electrode() {
    return electrode;
  }

  /** The service of so many amperes. */
  public static Optional<ServiceSize> of(int amperes) {
    return Arrays.stream(values()).filter(s -> s.amperes == amperes).findFirst();
  }

  /** All sizes in amperes, smallest first. */
  public static List<Integer> sizes() {
    return Arrays.stream(values()).map(ServiceSize::amperes).toList();
  }
}
