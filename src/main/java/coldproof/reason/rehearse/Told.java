package coldproof.reason.rehearse;

import coldproof.reason.rehearse.bench.QuickScores;

/**
 * A story with the scores that tell it.
 *
 * @param condition for each trial of the script the place of its condition in the scores
 */
record Told(Story story, QuickScores scores, int[] condition) {}
