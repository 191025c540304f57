/**
 * Pictures and pages as pixels and print: takes SVG or HTML text, gives PNG or PDF bytes, and measures text before it
 * is drawn. All of it uses the faces that are shipped in this package and none of the machine's, so that a bare server
 * without any font gives the same result as a desk. Knows nothing of plans.
 */
package wattle.emit.media.picture;
