package wattle.trials;

import java.util.Optional;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.model.Service;
import wattle.model.Source;
import wattle.model.SupplySystem;
import wattle.network.Complex;
import wattle.quantity.Quantity;

/**
 * The impedance of what stands behind a service, as a matrix between its legs. Of a center-tapped winding one half alone
 * has z_h, and both in series z_w; so the halves act on each other by z_h − z_w / 2. The legs of a wye are taken apart.
 */
final class SourceImpedance {
  /** Stands in where the plan states no source: next to nothing. */
  private static final double STIFF = 1e-5;

  private final Service service;
  private final double halfResistance;
  private final double halfReactance;

  private SourceImpedance(Service service, Library library) {
    this.service = service;
    // Without the published factors both halves are taken as half of the whole.
    halfResistance = library.limit("half-winding-resistance").map(Limit::value).map(Quantity::si).orElse(2.0);
    halfReactance = library.limit("half-winding-reactance").map(Limit::value).map(Quantity::si).orElse(2.0);
  }

  static Complex[][] of(Service service, Library library) {
    return new SourceImpedance(service, library).matrix();
  }

  private Complex[][] matrix() {
    SupplySystem system = service.system();
    double low = system.legToNeutralVolts();
    double high = system.legToLegVolts();
    Optional<Source> source = service.source();
    if (source.isPresent() && source.get() instanceof Source.Available available) {
      return apart(split(low / available.faultCurrent().si(), available.reactanceToResistance()));
    }
    if (source.isPresent() && source.get() instanceof Source.Transformer transformer) {
      double whole = transformer.impedance().si() * high * high / transformer.rating().si();
      Complex z = split(whole, transformer.reactanceToResistance());
      return system.kind() == SupplySystem.Kind.SPLIT_PHASE ? halves(z) : apart(z);
    }
    if (source.isPresent() && source.get() instanceof Source.Generator generator && generator.impedance().isPresent()) {
      double whole = generator.impedance().get().si() * high * high / generator.rating().si();
      Complex z = split(whole, Optional.empty());
      return apart(system.kind() == SupplySystem.Kind.SPLIT_PHASE ? z.times(0.5) : z);
    }
    return apart(new Complex(STIFF, 0));
  }

  /** Where X/R is not stated all of it is taken as resistance, which lowers the voltage of heaters most. */
  private static Complex split(double ohms, Optional<Quantity> ratio) {
    double q = ratio.map(Quantity::si).orElse(0.0);
    double resistance = ohms / Math.sqrt(1 + q * q);
    return new Complex(resistance, resistance * q);
  }

  private Complex[][] halves(Complex whole) {
    Complex half = new Complex(whole.re() * halfResistance / 4, whole.im() * halfReactance / 4);
    Complex between = half.minus(whole.times(0.5));
    return new Complex[][]{{half, between}, {between, half}};
  }

  private Complex[][] apart(Complex each) {
    int legs = service.system().legs().size();
    Complex[][] matrix = new Complex[legs][legs];
    for (int i = 0; i < legs; i++) {
      for (int k = 0; k < legs; k++) {
        matrix[i][k] = i == k ? each : Complex.ZERO;
      }
    }
    return matrix;
  }
}
