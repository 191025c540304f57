package wattle.conductors;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.finding.Citation;
import wattle.library.Key;
import wattle.library.Library;
import wattle.library.Table;
import wattle.model.Metal;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/** What a short circuit does to a conductor: what its insulation stands, and what melts it. */
public final class ShortCircuit {
  private static final Citation ADIABATIC = new Citation("IEC 60364-5-54", "543.1.2 and Annex A", true);
  private static final Citation PREECE = new Citation("W. H. Preece, Proc. Royal Society", "1888", false);
  private static final Citation ONDERDONK = new Citation("Onderdonk's equation", "as reprinted by physicsforums.com", false);
  private static final double CIRCULAR_MIL = Math.PI / 4 * 0.0254e-3 * 0.0254e-3;

  private final Optional<Table> constants;
  private final Optional<Table> ends;
  private final Optional<Table> melting;

  public ShortCircuit(Library library) {
    constants = library.table("short-circuit");
    ends = library.table("insulation-end");
    melting = library.table("melting");
  }

  /**
   * The adiabatic constant k in A·√s/mm², a plain number: {@code k = K × √ln((T_e + β) / (T_s + β))}. It holds for at
   * most 5 s.
   *
   * @param material of the insulation: {@code thermoplastic}, {@code thermoset} or {@code rubber}
   * @param start temperature before the fault; the rating of the insulation where nothing else is known
   */
  public Optional<Derivation> k(Metal metal, String material, Derivation start) {
    Key byMetal = metal(metal);
    Key byMaterial = Key.is("insulation", Derivation.stated("insulation", "", material));
    Optional<Derivation> constant = constants.flatMap(t -> t.find("constant of " + metal.word(), "K", "constant", byMetal));
    Optional<Derivation> beta = constants.flatMap(t -> t.find("beta of " + metal.word(), "β", "beta", byMetal));
    Optional<Derivation> end = ends.flatMap(t -> t.find("end temperature, " + material, "T_e", "end", byMaterial));
    if (constant.isEmpty() || beta.isEmpty() || end.isEmpty()) {
      return Optional.empty();
    }
    double offset = celsius(beta.get());
    double ratio = (celsius(end.get()) + offset) / (celsius(start) + offset);
    if (!(ratio > 1)) {
      return Optional.empty();
    }
    return Optional.of(
        Derivation.computed(
            "adiabatic constant", "k", "K × √ln((T_e + β) / (T_s + β))", constant.get().si() * Math.sqrt(Math.log(ratio)),
            Units.ONE, constant.get(), end.get(), beta.get(), start.named("start temperature", "T_s"))
            .citing(ADIABATIC)
            .remarking("In A·√s/mm²; for at most 5 s."));
  }

  /** The let-through that a conductor's insulation stands: I²t = k² × S². */
  public Derivation withstand(WireSize size, Derivation k) {
    return withstand(size, k, 1);
  }

  /** The same of conductors in parallel, which share the current evenly. */
  public Derivation withstand(WireSize size, Derivation k, int sets) {
    if (sets > 1) {
      double whole = k.si() * sets * size.areaSquareMillimeters();
      return Derivation.computed(
          "let-through that " + sets + " × " + size + " withstand", "I²t", "k² × (n_s × S)²", whole * whole, Units.AMPERE_SQUARED_SECOND,
          k, Derivation.stated("sets in parallel", "n_s", Quantity.of(sets, Units.ONE)), CrossSection.of(size, "S"))
          .citing(ADIABATIC);
    }
    double root = k.si() * size.areaSquareMillimeters();
    return Derivation.computed(
        "let-through that " + size + " withstands", "I²t", "k² × S²", root * root, Units.AMPERE_SQUARED_SECOND, k,
        CrossSection.of(size, "S"))
        .citing(ADIABATIC);
  }

  /** The thinnest cross-section that stands a current for a time: S = √(I²t) / k. */
  public Derivation leastArea(Derivation current, Derivation time, Derivation k) {
    double area = current.si() * Math.sqrt(time.si()) / k.si();
    return Derivation.computed(
        "least cross-section", "S", "√(I² × t) / k", area, Units.SQUARE_MILLIMETER,
        current.named(current.name(), "I"), time.named(time.name(), "t"), k)
        .citing(ADIABATIC);
  }

  /** The steady current that melts a bare wire in free air, by Preece: I = C × d^1.5, with d in inches. */
  public Optional<Derivation> meltingSteadily(WireSize size, Metal metal) {
    return melting
        .flatMap(t -> t.find("Preece's constant of " + metal.word(), "C", "preece", metal(metal)))
        .map(
            c -> {
              Derivation d = CrossSection.diameter(size, "d");
              double inches = size.diameterMeters() / 0.0254;
              Derivation shown = d.named(d.name(), "d");
              return Derivation.computed(
                  "steady melting current of " + size, "I", "C × (d / 1 in)^1.5", c.si() * Math.pow(inches, 1.5),
                  Units.AMPERE, c, shown)
                  .citing(PREECE)
                  .remarking("Bare wire in free air, for a long time; a conductor in a wall melts at a lower current.");
            });
  }

  /**
   * The current that melts a copper conductor in a time under some ten seconds, by Onderdonk:
   * {@code I = A × √(log10((T_m − T_a) / (234 + T_a) + 1) / (33 t))}, with A in circular mils. Absent for aluminum, for
   * which it gives no constants.
   */
  public Optional<Derivation> meltingWithin(WireSize size, Metal metal, Derivation time, Derivation ambient) {
    if (metal != Metal.COPPER) {
      return Optional.empty();
    }
    return melting
        .flatMap(t -> t.find("copper melts at", "T_m", "melts", metal(metal)))
        .map(
            melts -> {
              double circularMils = size.areaSquareMeters() / CIRCULAR_MIL;
              double start = celsius(ambient);
              double logarithm = Math.log10((celsius(melts) - start) / (234 + start) + 1);
              Derivation area = Derivation.computed(
                  "circular mils of " + size, "A", "S / (π / 4 × (25.4 mm / 1000)²)", circularMils, Units.ONE,
                  CrossSection.of(size, "S"));
              return Derivation.computed(
                  "current that melts " + size + " in " + time.value().text(), "I",
                  "A × √(log10((T_m − T_a) / (234 + T_a) + 1) / (33 × t))",
                  new Value.Amount(
                      Quantity.of(circularMils * Math.sqrt(logarithm / (33 * time.si())), Units.AMPERE)),
                  List.of(area, melts, ambient.named(ambient.name(), "T_a"), time.named(time.name(), "t")))
                  .citing(ONDERDONK);
            });
  }

  private static Key metal(Metal metal) {
    return Key.is("metal", Derivation.stated("metal", "", metal.word()));
  }

  private static double celsius(Derivation temperature) {
    return temperature.quantity().orElseThrow().in(Units.CELSIUS);
  }
}
