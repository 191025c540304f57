package wattle.compiler;

import wattle.bind.Memory;
import wattle.pattern.Expander;
import wattle.read.PlanLibrary;

/** What each phase of the structure made of a plan the last time. For one thread. */
record Remembered(PlanLibrary library, Expander patterns, Memory house) {
  Remembered() {
    this(new PlanLibrary(), new Expander(), new Memory());
  }
}
