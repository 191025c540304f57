/**
 * Results on the disk: written whole or not at all, only where the bytes differ, and never over a file of somebody
 * else's. A file of ours is known by its {@link wattle.emit.media.file.Mark}; whoever makes a format puts the mark into it.
 * Entry: {@link wattle.emit.media.file.OutputFiles}. Knows nothing of plans.
 */
package wattle.emit.media.file;
