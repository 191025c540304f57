package wattle.network;

/**
 * A box of three conductors, such as hot, neutral and ground, none of them open: the same sums as for any other box,
 * written out, since nearly all boxes of a house are of this kind. The admittances seen from a box are symmetric, for those
 * of elements and sources are; six of the nine are worked on.
 */
final class ThreeWires {
  private ThreeWires() {}

  /**
   * Puts the impedances of the three conductors before their terminals.
   *
   * @param y admittances, those of the box from {@code base} on, row by row
   * @param j currents of the terminals
   * @param start first terminal of the box
   */
  static void through(double[] y, double[] j, double[] ohms, double[] reactance, int start, int base) {
    int at = 2 * start;
    double aar = y[base];
    double aai = y[base + 1];
    double abr = y[base + 2];
    double abi = y[base + 3];
    double acr = y[base + 4];
    double aci = y[base + 5];
    double bbr = y[base + 8];
    double bbi = y[base + 9];
    double bcr = y[base + 10];
    double bci = y[base + 11];
    double ccr = y[base + 16];
    double cci = y[base + 17];
    double jar = j[at];
    double jai = j[at + 1];
    double jbr = j[at + 2];
    double jbi = j[at + 3];
    double jcr = j[at + 4];
    double jci = j[at + 5];
    double zr;
    double zi;
    double dr;
    double di;
    double square;
    double fr;
    double fi;
    double gr;
    double gi;
    double pr;
    double pi;
    double qr;
    double qi;
    double hr;

    zr = ohms[start];
    zi = reactance[start];
    dr = 1 + zr * aar - zi * aai;
    di = zr * aai + zi * aar;
    square = inverse(dr, di);
    fr = dr * square;
    fi = -di * square;
    gr = zr * fr - zi * fi;
    gi = zr * fi + zi * fr;
    pr = abr * gr - abi * gi;
    pi = abr * gi + abi * gr;
    qr = acr * gr - aci * gi;
    qi = acr * gi + aci * gr;
    bbr -= pr * abr - pi * abi;
    bbi -= pr * abi + pi * abr;
    bcr -= pr * acr - pi * aci;
    bci -= pr * aci + pi * acr;
    ccr -= qr * acr - qi * aci;
    cci -= qr * aci + qi * acr;
    jbr -= pr * jar - pi * jai;
    jbi -= pr * jai + pi * jar;
    jcr -= qr * jar - qi * jai;
    jci -= qr * jai + qi * jar;
    hr = aar * fr - aai * fi;
    aai = aar * fi + aai * fr;
    aar = hr;
    hr = abr * fr - abi * fi;
    abi = abr * fi + abi * fr;
    abr = hr;
    hr = acr * fr - aci * fi;
    aci = acr * fi + aci * fr;
    acr = hr;
    hr = jar * fr - jai * fi;
    jai = jar * fi + jai * fr;
    jar = hr;

    zr = ohms[start + 1];
    zi = reactance[start + 1];
    dr = 1 + zr * bbr - zi * bbi;
    di = zr * bbi + zi * bbr;
    square = inverse(dr, di);
    fr = dr * square;
    fi = -di * square;
    gr = zr * fr - zi * fi;
    gi = zr * fi + zi * fr;
    pr = abr * gr - abi * gi;
    pi = abr * gi + abi * gr;
    qr = bcr * gr - bci * gi;
    qi = bcr * gi + bci * gr;
    aar -= pr * abr - pi * abi;
    aai -= pr * abi + pi * abr;
    acr -= pr * bcr - pi * bci;
    aci -= pr * bci + pi * bcr;
    ccr -= qr * bcr - qi * bci;
    cci -= qr * bci + qi * bcr;
    jar -= pr * jbr - pi * jbi;
    jai -= pr * jbi + pi * jbr;
    jcr -= qr * jbr - qi * jbi;
    jci -= qr * jbi + qi * jbr;
    hr = bbr * fr - bbi * fi;
    bbi = bbr * fi + bbi * fr;
    bbr = hr;
    hr = abr * fr - abi * fi;
    abi = abr * fi + abi * fr;
    abr = hr;
    hr = bcr * fr - bci * fi;
    bci = bcr * fi + bci * fr;
    bcr = hr;
    hr = jbr * fr - jbi * fi;
    jbi = jbr * fi + jbi * fr;
    jbr = hr;

    zr = ohms[start + 2];
    zi = reactance[start + 2];
    dr = 1 + zr * ccr - zi * cci;
    di = zr * cci + zi * ccr;
    square = inverse(dr, di);
    fr = dr * square;
    fi = -di * square;
    gr = zr * fr - zi * fi;
    gi = zr * fi + zi * fr;
    pr = acr * gr - aci * gi;
    pi = acr * gi + aci * gr;
    qr = bcr * gr - bci * gi;
    qi = bcr * gi + bci * gr;
    aar -= pr * acr - pi * aci;
    aai -= pr * aci + pi * acr;
    abr -= pr * bcr - pi * bci;
    abi -= pr * bci + pi * bcr;
    bbr -= qr * bcr - qi * bci;
    bbi -= qr * bci + qi * bcr;
    jar -= pr * jcr - pi * jci;
    jai -= pr * jci + pi * jcr;
    jbr -= qr * jcr - qi * jci;
    jbi -= qr * jci + qi * jcr;
    hr = ccr * fr - cci * fi;
    cci = ccr * fi + cci * fr;
    ccr = hr;
    hr = acr * fr - aci * fi;
    aci = acr * fi + aci * fr;
    acr = hr;
    hr = bcr * fr - bci * fi;
    bci = bcr * fi + bci * fr;
    bcr = hr;
    hr = jcr * fr - jci * fi;
    jci = jcr * fi + jci * fr;
    jcr = hr;

    y[base] = aar;
    y[base + 1] = aai;
    y[base + 2] = abr;
    y[base + 3] = abi;
    y[base + 4] = acr;
    y[base + 5] = aci;
    y[base + 6] = abr;
    y[base + 7] = abi;
    y[base + 8] = bbr;
    y[base + 9] = bbi;
    y[base + 10] = bcr;
    y[base + 11] = bci;
    y[base + 12] = acr;
    y[base + 13] = aci;
    y[base + 14] = bcr;
    y[base + 15] = bci;
    y[base + 16] = ccr;
    y[base + 17] = cci;
    j[at] = jar;
    j[at + 1] = jai;
    j[at + 2] = jbr;
    j[at + 3] = jbi;
    j[at + 4] = jcr;
    j[at + 5] = jci;
  }

  private static double inverse(double dr, double di) {
    double square = dr * dr + di * di;
    if (!(square > 0)) {
      throw Elimination.resonance();
    }
    return 1 / square;
  }

  /** Adds what the box takes to the box before, whose terminals it hangs on. */
  static void toParent(double[] y, double[] j, int[] up, int start, int base, int parentStart, int parentSize, int parentBase) {
    for (int a = 0; a < 3; a++) {
      int row = up[start + a];
      int to = parentBase + 2 * ((row - parentStart) * parentSize - parentStart);
      int from = base + 6 * a;
      int first = to + 2 * up[start];
      int second = to + 2 * up[start + 1];
      int third = to + 2 * up[start + 2];
      y[first] += y[from];
      y[first + 1] += y[from + 1];
      y[second] += y[from + 2];
      y[second + 1] += y[from + 3];
      y[third] += y[from + 4];
      y[third + 1] += y[from + 5];
      j[2 * row] += j[2 * (start + a)];
      j[2 * row + 1] += j[2 * (start + a) + 1];
    }
  }

  /** Amperes of the conductors and volts of the terminals, from the volts of the box before. */
  static void back(
      double[] y, double[] j, int[] up, double[] ohms, double[] reactance, double[] volts, double[] amps, int start, int base) {
    int first = 2 * up[start];
    int second = 2 * up[start + 1];
    int third = 2 * up[start + 2];
    double ar = volts[first];
    double ai = volts[first + 1];
    double br = volts[second];
    double bi = volts[second + 1];
    double cr = volts[third];
    double ci = volts[third + 1];
    for (int a = 0; a < 3; a++) {
      int t = start + a;
      int of = base + 6 * a;
      double re = j[2 * t] + y[of] * ar - y[of + 1] * ai + y[of + 2] * br - y[of + 3] * bi + y[of + 4] * cr - y[of + 5] * ci;
      double im = j[2 * t + 1] + y[of] * ai + y[of + 1] * ar + y[of + 2] * bi + y[of + 3] * br + y[of + 4] * ci + y[of + 5] * cr;
      amps[2 * t] = re;
      amps[2 * t + 1] = im;
      int u = 2 * up[t];
      volts[2 * t] = volts[u] - (ohms[t] * re - reactance[t] * im);
      volts[2 * t + 1] = volts[u + 1] - (ohms[t] * im + reactance[t] * re);
    }
  }
}
