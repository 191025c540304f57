package wattle.live;

import java.util.List;
import java.util.Optional;
import wattle.model.Device;
import wattle.model.DeviceKind;
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

  /** Whether it feeds the house when it is on. */
  static boolean isSource(Device device) {
    return device.kind().family() == DeviceKind.Family.SOURCE;
  }

  /** Whether a source may be told how much it gives; one that holds the voltage gives what is taken. */
  static boolean isTold(Device device) {
    return device.kind().grid().filter(g -> g != DeviceKind.Grid.FORMS).isPresent();
  }

  /** Whether a source can be charged. */
  static boolean isCharged(Device device) {
    return device.kind().grid().equals(Optional.of(DeviceKind.Grid.EITHER));
  }

  private static boolean isConnected(Load load) {
    return !(load.connection() instanceof Load.Connection.Unconnected);
  }
}
