/**
 * Plots as values and their drawing as SVG: axes with ticks at round numbers, points, lines, bands and intervals. A plot needs neither
 * scripts nor fonts on the machine that draws it, tells its series apart by shape as well as by colour, and carries its description in words.
 * Enter at {@link coldproof.report.plot.Plot}. Knows no study.
 */
package coldproof.report.plot;
