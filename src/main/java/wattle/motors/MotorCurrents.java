package wattle.motors;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.library.Key;
import wattle.library.Library;
import wattle.quantity.Quantity;

/** Full-load currents of motors by their horsepower, as the code has them counted (NFPA 70 430.6(A)(1)). */
public record MotorCurrents(Library library) {
  /** A column of the tables, and the voltages that it serves. */
  private record Column(String name, double from, double to) {
    boolean serves(double volts) {
      return volts >= from && volts <= to;
    }
  }

  /** 200 V and 208 V stand for themselves; the others serve a range (text above tables 430.248 and 430.250). */
  private static final List<Column> COLUMNS = List.of(
      new Column("at-115", 100, 130), new Column("at-200", 190, 204), new Column("at-208", 204.001, 216),
      new Column("at-230", 216.001, 250),
      new Column("at-460", 440, 480), new Column("at-575", 550, 600));

  /** Name of the table of motors on one hot or between two, or between three. */
  private static String table(boolean threePhase) {
    return threePhase ? "motor-current-three-phase" : "motor-current";
  }

  /** What the tables cover, in words. */
  public static String range(boolean threePhase) {
    return (threePhase ? "1/2 hp to 200 hp (to 2 hp at 115 V, to 500 hp at 460 V)" : "1/6 hp to 10 hp at 115 V to 230 V")
        + ", in the steps that are made";
  }

  /**
   * @param rated in horsepower
   * @param volts that the motor is rated for
   * @return amperes in each line; empty where no figure is listed
   */
  public Optional<Double> fullLoad(Quantity rated, double volts, boolean threePhase) {
    return column(volts).flatMap(
        c -> library.table(table(threePhase))
            .flatMap(t -> t.find("full-load current", "I", c.name, Key.is("power", Derivation.stated("rating", "P", rated)))))
        .map(Derivation::si);
  }

  /** Whether a motor for one voltage is, at another, still within what the same column serves; 200 V motors are made for 208 V systems. */
  public static boolean sameColumn(double rated, double system) {
    Optional<Column> column = column(rated);
    return column.isPresent() && (column.equals(column(system)) || rated < system && column.get().name.equals("at-200") && system <= 216);
  }

  private static Optional<Column> column(double volts) {
    return COLUMNS.stream().filter(c -> c.serves(volts)).findFirst();
  }
}
