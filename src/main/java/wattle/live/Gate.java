package wattle.live;

import com.sun.net.httpserver.Headers;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Who may ask. A page on another site can make the browser send requests here, and a name of its own can be made to lead to
 * this machine: so the host must be the loop-back address that was printed, the origin of a request, where it has one, the
 * page itself, and its path must begin with a token that nobody else can know.
 */
final class Gate {
  private static final int TOKEN_BYTES = 24;

  private final String token;
  private final List<String> hosts;

  private Gate(String token, List<String> hosts) {
    this.token = token;
    this.hosts = hosts;
  }

  /** @param port that is listened on */
  static Gate of(int port) {
    byte[] random = new byte[TOKEN_BYTES];
    new SecureRandom().nextBytes(random);
    String token = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
    return new Gate(token, List.of("127.0.0.1:" + port, "localhost:" + port));
  }

  /** Where the page is. */
  URI address() {
    return URI.create("http://" + hosts.get(0) + "/" + token + "/");
  }

  /** What is asked for, behind the token; absent where the request is refused. */
  Optional<String> admitted(URI asked, Headers headers) {
    List<String> host = headers.getOrDefault("Host", List.of());
    List<String> origin = headers.getOrDefault("Origin", List.of());
    if (host.size() != 1 || !hosts.contains(host.get(0).toLowerCase(Locale.ROOT)) || origin.size() > 1 || asked.isAbsolute()) {
      return Optional.empty();
    }
    if (origin.size() == 1 && !origin.get(0).equals("http://" + host.get(0))) {
      return Optional.empty();
    }
    String path = asked.getRawPath() == null ? "" : asked.getRawPath();
    int end = path.indexOf('/', 1);
    boolean known = path.startsWith("/") && end > 0 && isToken(path.substring(1, end));
    return known ? Optional.of(path.substring(end + 1)) : Optional.empty();
  }

  /** Takes as long for a token that is nearly right. */
  private boolean isToken(String given) {
    return MessageDigest.isEqual(token.getBytes(StandardCharsets.UTF_8), given.getBytes(StandardCharsets.UTF_8));
  }
}
