package wattle.worksheet;

import java.util.Arrays;
import java.util.Optional;

/** The computations that methods of code packs may name. */
public enum Mechanism {
  DWELLING_STANDARD("dwelling-standard", new StandardMethod(false)), DWELLING_OPTIONAL("dwelling-optional",
      new OptionalMethod()), DWELLING_EXISTING("dwelling-existing", new ExistingMethod()), DWELLING_MEASURED("dwelling-measured",
          new MeasuredMethod()), MULTI_STANDARD("multi-standard", new StandardMethod(true)), MULTI_OPTIONAL("multi-optional",
              new SeveralOptional()), TWO_OPTIONAL("two-optional", new TwoOptional()), CANADIAN_SINGLE("canadian-single",
                  new CanadianSingle()), CANADIAN_SUITE("canadian-suite", new CanadianSeveral(true)), CANADIAN_APARTMENTS(
                      "canadian-apartments",
                      new CanadianSeveral(true)), CANADIAN_ROW("canadian-row",
                          new CanadianSeveral(false)), CANADIAN_MEASURED("canadian-measured",
                              new CanadianMeasured()), FARM("farm-buildings", new FarmMethod());

  private final String word;
  private final transient Calculation calculation;

  Mechanism(String word, Calculation calculation) {
    this.word = word;
    this.calculation = calculation;
  }

  /** The word of the notation. */
  public String word() {
    return word;
  }

  /** Whether it is for several dwellings on one service or feeder. */
  public boolean isForSeveral() {
    return this == MULTI_STANDARD || this == MULTI_OPTIONAL || this == TWO_OPTIONAL || this == CANADIAN_APARTMENTS || this == CANADIAN_ROW;
  }

  /** Whether it is for farm buildings without a dwelling. */
  public boolean isForFarms() {
    return this == FARM;
  }

  /** Whether it is for existing dwellings that get more load. */
  public boolean isForExisting() {
    return this == DWELLING_EXISTING || this == DWELLING_MEASURED || this == CANADIAN_MEASURED;
  }

  /** Whether its code counts watts, and not volt-amperes. */
  public boolean countsWatts() {
    return this == CANADIAN_SINGLE || this == CANADIAN_SUITE || this == CANADIAN_APARTMENTS || this == CANADIAN_ROW
        || this == CANADIAN_MEASURED;
  }

  Calculation calculation() {
    return calculation;
  }

  static Optional<Mechanism> named(String word) {
    return Arrays.stream(values()).filter(m -> m.word.equals(word)).findFirst();
  }
}
