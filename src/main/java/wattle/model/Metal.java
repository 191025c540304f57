package wattle.model;

/** What a conductor is made of. */
public enum Metal {
  COPPER("Cu", "copper"), ALUMINUM("Al", "aluminum");

  private final String symbol;
  private final String word;

  Metal(String symbol, String word) {
    this.symbol = symbol;
    this.word = word;
  }

  public String symbol() {
    return symbol;
  }

  public String word() {
    return word;
  }
}
