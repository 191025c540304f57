package wattle.server;

import java.lang.reflect.Method;
import java.util.Set;
import java.util.TreeSet;
import org.eclipse.lsp4j.jsonrpc.services.JsonRequest;
import org.eclipse.lsp4j.jsonrpc.services.JsonSegment;
import org.eclipse.lsp4j.services.LanguageServer;

/**
 * Requests of the protocol that a server does not offer, by name: those of the interfaces that it and its services implement whose
 * body it leaves to the library, which only throws.
 */
final class Unanswered {
  private final Set<String> methods = new TreeSet<>();

  Unanswered(LanguageServer server) {
    gather(server);
    gather(server.getTextDocumentService());
    gather(server.getWorkspaceService());
  }

  /** Whether a request of this name is one of them; false of a name that the protocol does not have. */
  boolean has(String method) {
    return methods.contains(method);
  }

  /** All of them, in order. */
  Set<String> all() {
    return Set.copyOf(methods);
  }

  private void gather(Object service) {
    for (Class<?> of : service.getClass().getInterfaces()) {
      for (Method method : of.getMethods()) {
        JsonRequest request = method.getAnnotation(JsonRequest.class);
        if (request != null && !isAnswered(service, method)) {
          methods.add(name(of, method, request));
        }
      }
    }
  }

  private static String name(Class<?> of, Method method, JsonRequest request) {
    JsonSegment segment = of.getAnnotation(JsonSegment.class);
    String own = request.value().isEmpty() ? method.getName() : request.value();
    return segment == null || !request.useSegment() ? own : segment.value() + "/" + own;
  }

  private static boolean isAnswered(Object service, Method method) {
    try {
      return !service.getClass().getMethod(method.getName(), method.getParameterTypes()).getDeclaringClass().isInterface();
    } catch (NoSuchMethodException e) {
      throw new AssertionError(e); // a class has every method of its interfaces
    }
  }
}
