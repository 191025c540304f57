package wattle.live;

import java.util.List;
import wattle.model.Device;
import wattle.model.Load;
import wattle.model.LoadClass;

/** What devices can be made to draw. */
final class Loads {
  private Loads() {}

  /** Whether it draws something when it is on, as the plan states it; a source that feeds back does not. */
  static boolean draws(Device device) {
    return device.loads().stream().anyMatch(l -> l.voltAmperes() > 0 && isConnected(l) && l.loadClass() != LoadClass.SOURCE);
  }

  /** Parts that may be given something to draw; one that is empty is the whole device. */
  static List<String> parts(Device device) {
    return device.loads().stream().filter(l -> isConnected(l) && l.loadClass() != LoadClass.SOURCE).map(Load::part).distinct().toList();
  }

  private static boolean isConnected(Load load) {
    return !(load.connection() instanceof Load.Connection.Unconnected);
  }
}
