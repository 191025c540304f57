package wattle.emit.view.oneline;

/**
 * One line of a panel in two revisions.
 *
 * @param row as the later revision has it; of a removed one, as the earlier had it
 * @param was what differs, in words; empty for nothing
 * @param panel key of the panel that it feeds; empty for none
 */
record DifferenceRow(Difference difference, PanelRow row, String was, String panel) {}
