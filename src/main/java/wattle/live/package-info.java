/**
 * The live page: a plan in a browser on the same machine, that redraws on save and in which breakers open, neutrals are lost
 * and loads switch on with a click. In come the files of a plan and what a page has clicked together, as the lines of a trial
 * in the notation; out go pages. All figures are those of {@link wattle.trials.Trials}, from the text that the page shows.
 */
package wattle.live;
