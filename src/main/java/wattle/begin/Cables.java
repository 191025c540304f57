package wattle.begin;

/**
 * Cable types that are usual under a code.
 *
 * @param inside in dry walls
 * @param outside in the ground and the wet
 */
record Cables(String inside, String outside) {
  static Cables under(String code) {
    return code.startsWith("ca-") ? new Cables("NMD90", "NMWU") : new Cables("NM-B", "UF-B");
  }
}
