package wattle.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import wattle.model.Role;

/**
 * The contacts of a group of switches. One switch joins hot and switch leg when it is on, on both hots where it opens two. Of several,
 * the first joins the hot to one of two travelers, those between pass them on straight or crossed, and the last joins one of them to the
 * switch leg. With all of them on the lights are on; each one that is off changes that.
 */
final class Contacts {
  private final HouseNetworkBuilder out;
  private final Map<Integer, Map<Role, Integer>> terminals;
  private final Map<Integer, Integer> boxes;

  Contacts(HouseNetworkBuilder out, Map<Integer, Map<Role, Integer>> terminals, Map<Integer, Integer> boxes) {
    this.out = out;
    this.terminals = terminals;
    this.boxes = boxes;
  }

  /** What must have a terminal at a point for the switches that are there. */
  static List<Role> rolesAt(Controls.Group group, int point) {
    List<Role> roles = new ArrayList<>();
    int hot = group.hots().get(0);
    int last = group.switches().size() - 1;
    for (int i = 0; i <= last; i++) {
      if (group.points().get(i) != point) {
        continue;
      }
      if (i == last) {
        roles.addAll(group.legs());
      } else {
        roles.add(traveler(group, i, 1, hot));
        roles.add(traveler(group, i, 2, hot));
      }
      if (i > 0) {
        roles.add(traveler(group, i - 1, 1, hot));
        roles.add(traveler(group, i - 1, 2, hot));
      }
    }
    return roles;
  }

  private static Role traveler(Controls.Group group, int after, int number, int hot) {
    return new Role.Traveler(group.switches().get(after), group.switches().get(after + 1), number, hot);
  }

  void close(Controls.Group group) {
    int last = group.switches().size() - 1;
    if (last == 0) {
      if (isOn(group, 0)) {
        group.hots().forEach(h -> join(group.points().get(0), new Role.Hot(h), new Role.SwitchLeg(group.last(), h)));
      }
      return;
    }
    int hot = group.hots().get(0);
    Role leg = new Role.SwitchLeg(group.last(), hot);
    join(group.points().get(0), new Role.Hot(hot), traveler(group, 0, isOn(group, 0) ? 1 : 2, hot));
    for (int i = 1; i < last; i++) {
      int crossed = isOn(group, i) ? 0 : 1;
      for (int wire = 1; wire <= 2; wire++) {
        int onward = crossed == 0 ? wire : 3 - wire;
        join(group.points().get(i), traveler(group, i - 1, wire, hot), traveler(group, i, onward, hot));
      }
    }
    join(group.points().get(last), traveler(group, last - 1, isOn(group, last) ? 1 : 2, hot), leg);
  }

  private boolean isOn(Controls.Group group, int index) {
    return !out.scenario.off().contains(group.switches().get(index));
  }

  private void join(int point, Role one, Role other) {
    Map<Role, Integer> here = terminals.get(point);
    if (here != null && here.containsKey(one) && here.containsKey(other)) {
      out.net.resistance(boxes.get(point), here.get(one), here.get(other), HouseNetworkBuilder.CONTACT);
    }
  }
}
