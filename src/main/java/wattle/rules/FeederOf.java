package wattle.rules;

import wattle.model.Panel;
import wattle.model.Stretch;

/** The run that feeds a panel. */
record FeederOf(Panel panel, Stretch stretch) {}
