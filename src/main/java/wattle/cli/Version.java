package wattle.cli;

import picocli.CommandLine.IVersionProvider;

/** The version that the build put into the jar. */
final class Version implements IVersionProvider {
  /** Stands where classes are run without a jar. */
  private static final String UNPACKAGED = "unpackaged";

  static String number() {
    String version = Version.class.getPackage().getImplementationVersion();
    return version == null ? UNPACKAGED : version;
  }

  @Override
  public String[] getVersion() {
    return new String[]{"wattle " + number()};
  }
}
