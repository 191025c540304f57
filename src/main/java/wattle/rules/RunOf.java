package wattle.rules;

import wattle.model.Branch;
import wattle.model.Section;

/** A run with the branch that it is of. */
record RunOf(Branch branch, Section section) {}
