/**
 * The report: all that is known of a plan in one page that needs nothing beside it. In: a compilation, its figures and
 * pictures. Out: HTML that is also XML.
 */
package wattle.emit.document.report;
