package wattle.conductors;

import java.util.List;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.library.LibraryLoader;
import wattle.library.StandardLibrary;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/** The packs and the words that these tests share. */
final class Tables {
  static final Library COMMON = library("common");
  static final Library US = library("us-2023");
  static final Library CA = library("ca-2021");

  private Tables() {}

  private static Library library(String pack) {
    return LibraryLoader.load(StandardLibrary.files(List.of(pack)).value()).value();
  }

  static WireSize size(String text) {
    return WireSize.parse(text).orElseThrow(() -> new AssertionError(text));
  }

  static Derivation amperes(double amperes) {
    return Derivation.stated("current", "I", Quantity.of(amperes, Units.AMPERE));
  }

  static Derivation celsius(double celsius) {
    return Derivation.stated("ambient", "T_a", Quantity.of(celsius, Units.CELSIUS));
  }

  static Derivation fahrenheit(double fahrenheit) {
    return Derivation.stated("ambient", "T_a", Quantity.of(fahrenheit, Units.FAHRENHEIT));
  }

  static Derivation seconds(double seconds) {
    return Derivation.stated("time", "t", Quantity.of(seconds, Units.SECOND));
  }

  static Derivation count(int number) {
    return Derivation.stated("conductors together", "n", Quantity.of(number, Units.ONE));
  }
}
