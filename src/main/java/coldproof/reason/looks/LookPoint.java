package coldproof.reason.looks;

/**
 * A moment at which the data are judged.
 *
 * @param number of the look, first is 1
 * @param lastPosition the look is taken when every trial up to this one is run or skipped
 * @param units sessions, pairs or trials done by then
 * @param fraction share of the whole study's information, in (0, 1]; 1 at the last look
 * @param degreesOfFreedom of the noise at the look
 */
public record LookPoint(int number, int lastPosition, int units, double fraction, double degreesOfFreedom) {}
