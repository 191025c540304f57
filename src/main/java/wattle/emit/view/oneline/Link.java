package wattle.emit.view.oneline;

/**
 * A feeder or service entrance between two blocks.
 *
 * @param exit where it leaves the block that feeds
 */
record Link(Block from, Block.Exit exit, Block to) {}
