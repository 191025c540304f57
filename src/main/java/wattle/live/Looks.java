package wattle.live;

import java.lang.ref.SoftReference;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The looks that were made last, so that their figures can still be opened while there is memory for them. */
final class Looks {
  private static final int KEPT = 24;

  private final Map<Long, SoftReference<Look>> kept = new LinkedHashMap<>() {
    private static final long serialVersionUID = 1;

    @Override
    protected boolean removeEldestEntry(Map.Entry<Long, SoftReference<Look>> eldest) {
      return size() > KEPT;
    }
  };
  private long last;

  /** One at a time: each takes milliseconds, and all processors of the machine are the editor's too. */
  synchronized Look make(Version version, Asked asked) {
    Look made = Look.of(++last, version, asked);
    kept.put(last, new SoftReference<>(made));
    return made;
  }

  /** Forgets all of them, since memory has run out: their figures are out of date. */
  synchronized void letGo() {
    kept.clear();
  }

  synchronized Optional<Look> get(long number) {
    return Optional.ofNullable(kept.get(number)).map(SoftReference::get);
  }
}
