package wattle.bind;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.DeviceKind;
import wattle.model.Origin;
import wattle.model.Status;
import wattle.model.Terminals;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/**
 * A device as its room states it, before its branch is known.
 *
 * @param loads what it draws, by part; the whole under an empty name
 * @param controls the paths that a switch names, to be resolved when all rooms are known
 * @param hot the color or leg it says it sits on
 */
record UnwiredDevice(
    String name,
    Optional<String> label,
    DeviceKind kind,
    String room,
    String box,
    Set<String> traits,
    Set<String> boxTraits,
    Map<String, Quantity> loads,
    List<Tree.Path> controls,
    Optional<String> location,
    Optional<Tree.Word> hot,
    Map<String, Quantity> facts,
    Terminals terminals,
    Status status,
    Origin origin) {}
