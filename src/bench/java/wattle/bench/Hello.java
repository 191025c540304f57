package wattle.bench;

/** The least that a Java process can do. */
public final class Hello {
  public static void main(String[] args) {
    System.out.println("hello");
  }

  private Hello() {}
}
