package wattle.bind;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Device;
import wattle.model.SupplySystem;

/**
 * A branch with the devices on it.
 *
 * @param basis all that it was made from
 * @param branch absent where nothing says what it is run with
 * @param devices in the order reached
 */
record Circuit(Basis basis, Optional<Branch> branch, List<Device> devices) {

  /**
   * What a circuit rests on.
   *
   * @param connected the branch with its devices; its runs are the same object where it was not traced anew
   * @param hots the hots it had then, for the branch itself may be given others
   * @param system of the panel that feeds it; absent where none does
   * @param hanging in the order reached
   */
  record Basis(
      BranchDraft connected, List<BranchHot> hots, Optional<SupplySystem> system, List<Hanging> hanging) {
    /** Whether it is fed like that; how it is run and what hangs on it is not looked at. */
    boolean isFedAs(List<BranchHot> otherHots, Optional<SupplySystem> otherSystem) {
      return hots.equals(otherHots) && system.equals(otherSystem);
    }

    boolean isSameAs(Basis other) {
      if (connected.legs != other.connected.legs || hanging.size() != other.hanging.size() || !isFedAs(other.hots, other.system)) {
        return false;
      }
      for (int i = 0; i < hanging.size(); i++) {
        if (!hanging.get(i).isSameAs(other.hanging.get(i))) {
          return false;
        }
      }
      return true;
    }
  }

  /**
   * A device on a branch.
   *
   * @param stop where, as the branch counts its stops
   * @param lights what it controls
   * @param halves halves of receptacles that it controls alone
   * @param controlled whether something controls it, and {@code partly} whether one half of it alone
   */
  record Hanging(
      UnwiredDevice device, int stop, Set<String> lights, List<String> halves, boolean controlled, boolean partly) {
    boolean isSameAs(Hanging other) {
      return device == other.device && stop == other.stop && controlled == other.controlled && partly == other.partly
          && lights.equals(other.lights) && halves.equals(other.halves);
    }
  }
}
