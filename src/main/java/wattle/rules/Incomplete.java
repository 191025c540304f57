package wattle.rules;

import java.util.AbstractCollection;
import java.util.Collection;
import java.util.Iterator;

/** Things to which others may belong that a mistake in the plan has left out. */
final class Incomplete extends AbstractCollection<Object> {
  private final Collection<?> known;

  Incomplete(Collection<?> known) {
    this.known = known;
  }

  @Override
  @SuppressWarnings("unchecked")
  public Iterator<Object> iterator() {
    return (Iterator<Object>) known.iterator();
  }

  @Override
  public int size() {
    return known.size();
  }
}
