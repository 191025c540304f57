package wattle.emit.sheet.worksheet;

import java.util.Optional;
import wattle.conductors.Conductors;
import wattle.derivation.Derivation;
import wattle.model.Metal;
import wattle.model.SupplySystem;
import wattle.quantity.WireSize;
import wattle.worksheet.Inputs;
import wattle.worksheet.Worksheet;

/**
 * The conductors that go with the next standard rating, before any correction for heat or bundling: by the table for conductors that
 * carry the whole of one dwelling where the code has one, else by the column of what terminals of that rating are marked for at least.
 */
final class NextConductor {
  /** NFPA 70 110.14(C)(1): amperes up to which terminals count as of 60 °C unless they are marked. */
  private static final double LARGE = 100;
  private static final double COLUMN_OF_SMALL = 60;
  private static final double COLUMN_OF_LARGE = 75;

  private NextConductor() {}

  static Optional<String> note(Worksheet worksheet, Inputs inputs, Conductors conductors) {
    if (worksheet.nextRating().isEmpty()) {
      return Optional.empty();
    }
    Derivation rating = worksheet.nextRating().get();
    SupplySystem.Kind kind = inputs.system().kind();
    boolean twoHots = kind == SupplySystem.Kind.SPLIT_PHASE || kind == SupplySystem.Kind.TWO_LEGS_OF_WYE;
    boolean whole = twoHots && inputs.scope() != Inputs.Scope.PART && inputs.dwellingCount() == 1;
    Optional<Derivation> copper = whole ? conductors.grounds().forService(rating, Metal.COPPER) : Optional.empty();
    Optional<Derivation> aluminum = whole ? conductors.grounds().forService(rating, Metal.ALUMINUM) : Optional.empty();
    String of = "Conductors for " + rating.value().text() + ": ";
    if (copper.isPresent() && aluminum.isPresent()) {
      String place = copper.get().sources().stream().map(c -> c.place().split(", as ")[0]).findFirst().orElse("");
      return Optional.of(
          of + copper.get().value().text() + " copper or " + aluminum.get().value().text() + " aluminum, " + place
              + ", where no correction applies.");
    }
    Optional<WireSize> cu = least(rating, Metal.COPPER, conductors);
    Optional<WireSize> al = least(rating, Metal.ALUMINUM, conductors);
    return cu.isEmpty() || al.isEmpty()
        ? Optional.empty()
        : Optional.of(
            of + cu.get() + " copper or " + al.get() + " aluminum by the column of " + Math.round(column(rating))
                + " °C, where no correction applies.");
  }

  private static Optional<WireSize> least(Derivation rating, Metal metal, Conductors conductors) {
    return conductors.ampacities().leastFor(
        rating.si(), metal, column(rating), s -> conductors.breakers().ceiling(s, metal).filter(c -> c.si() < rating.si()).isEmpty());
  }

  private static double column(Derivation rating) {
    return rating.si() > LARGE ? COLUMN_OF_LARGE : COLUMN_OF_SMALL;
  }
}
