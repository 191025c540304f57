package wattle.cli;

import java.util.Iterator;
import java.util.List;
import wattle.library.StandardLibrary;

/** Words that a shell offers for arguments which are no closed set to the command: what the library has, and sizes of paper. */
final class KnownWords {
  private KnownWords() {}

  /** Names of the rules of all packs. */
  static final class Rules implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return StandardLibrary.library(StandardLibrary.packNames()).rules().keySet().stream().sorted().iterator();
    }
  }

  /** Names of the packs, those of codes among them. */
  static final class Packs implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return StandardLibrary.packNames().stream().sorted().iterator();
    }
  }

  /** Names of the packs that are codes. */
  static final class Codes implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return StandardLibrary.packNames().stream().filter(p -> !p.equals("common")).sorted().iterator();
    }
  }

  /** Sizes of paper that pictures are set on. */
  static final class Papers implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return List.of("letter", "A4", "A3", "tabloid").iterator();
    }
  }

  /** Sizes of paper that documents are set on. */
  static final class Pages implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return List.of("letter", "A4").iterator();
    }
  }
}
