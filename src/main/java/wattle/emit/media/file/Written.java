package wattle.emit.media.file;

/** What became of an output. */
public enum Written {
  CREATED, REPLACED,
  /** The file held the same bytes already, so it was left alone and keeps its time. */
  UNCHANGED
}
