package wattle.live;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The looks that were made last, so that their figures can still be opened. */
final class Looks {
  private static final int KEPT = 24;

  private final Map<Long, Look> kept = new LinkedHashMap<>() {
    private static final long serialVersionUID = 1;

    @Override
    protected boolean removeEldestEntry(Map.Entry<Long, Look> eldest) {
      return size() > KEPT;
    }
  };
  private long last;

  /** One at a time: each takes milliseconds, and all processors of the machine are the editor's too. */
  synchronized Look make(Version version, Asked asked) {
    Look made = Look.of(++last, version, asked);
    kept.put(last, made);
    return made;
  }

  synchronized Optional<Look> get(long number) {
    return Optional.ofNullable(kept.get(number));
  }
}
