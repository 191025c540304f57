package wattle.rules;

import wattle.quantity.Dimension;

/** What a claim of a rule has as its value. */
public sealed interface Type {
  Type TRUTH = new Truth();
  Type WORDS = new Words();
  Type WORD_SET = new WordSet();
  Type SIZE = new Size();

  /** A quantity. */
  record Figure(Dimension dimension) implements Type {
    @Override
    public String text() {
      return dimension.trade();
    }
  }

  /** True or false. */
  record Truth() implements Type {
    @Override
    public String text() {
      return "true or false";
    }
  }

  /** A word or text. */
  record Words() implements Type {
    @Override
    public String text() {
      return "a word";
    }
  }

  /** Several words, in no order. */
  record WordSet() implements Type {
    @Override
    public String text() {
      return "a set of words";
    }
  }

  /** Size of a conductor. */
  record Size() implements Type {
    @Override
    public String text() {
      return "a wire size such as 12 AWG";
    }
  }

  /** One thing of the house. */
  record Thing(Kind kind) implements Type {
    @Override
    public String text() {
      return "a " + kind.word();
    }
  }

  /** Any number of things of one kind. */
  record Things(Kind kind) implements Type {
    @Override
    public String text() {
      return "several of: " + kind.word();
    }
  }

  /** A plain number. */
  static Type number() {
    return new Figure(Dimension.NONE);
  }

  /** In words, for messages and the table of properties. */
  String text();
}
