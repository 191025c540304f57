package wattle.server;

import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import wattle.syntax.Tree;

/**
 * Visits everything that was written, outer things first. What is inside a tree is read off its records, so that a
 * construct that is added to the notation is walked without a word here.
 */
final class TreeWalk {
  private final Map<Class<?>, List<Method>> parts = new HashMap<>();

  /** Visits a tree and all in it, in the order of the records' components. Not recursive: an expression may be deep. */
  void each(Tree root, Consumer<Tree> visitor) {
    Deque<Tree> open = new ArrayDeque<>(List.of(root));
    while (!open.isEmpty()) {
      Tree at = open.pop();
      visitor.accept(at);
      List<Method> components = parts.computeIfAbsent(at.getClass(), TreeWalk::components);
      for (int i = components.size() - 1; i >= 0; i--) {
        push(value(components.get(i), at), open);
      }
    }
  }

  private static void push(Object value, Deque<Tree> open) {
    if (value instanceof Tree tree) {
      open.push(tree);
    } else if (value instanceof Optional<?> optional) {
      optional.ifPresent(inside -> push(inside, open));
    } else if (value instanceof List<?> list) {
      for (int i = list.size() - 1; i >= 0; i--) {
        push(list.get(i), open);
      }
    }
  }

  private static List<Method> components(Class<?> type) {
    return Arrays.stream(type.getRecordComponents()).map(RecordComponent::getAccessor).toList();
  }

  private static Object value(Method accessor, Tree tree) {
    try {
      return accessor.invoke(tree);
    } catch (ReflectiveOperationException e) {
      throw new AssertionError("every part of a tree can be read", e);
    }
  }

  /** The trees that hold an offset, outermost first; touching its end counts as holding it. */
  List<Tree> around(Tree root, int offset) {
    List<Tree> found = new java.util.ArrayList<>();
    each(
        root,
        tree -> {
          if (tree.span().start() <= offset && offset <= tree.span().end()) {
            found.add(tree);
          }
        });
    return found;
  }
}
