package coldproof.reason.sizing;

/**
 * What a search for the cheapest plan is told beyond the plan's own budget.
 *
 * @param limits what must not be exceeded; the plan's outdoors limit is added where none is given
 * @param outdoorWeight what a minute outdoors counts against one indoors, 1 or more
 * @param travelSecondsPerOuting way out and back, s, 0 or more
 * @param wattHoursOpening energy a session takes before its first trial, Wh, 0 or more
 * @param wattHoursPerTrial energy of a trial, Wh, 0 or more
 */
public record SearchTerms(StudyLimits limits, double outdoorWeight, double travelSecondsPerOuting, double wattHoursOpening, double wattHoursPerTrial) {
    /** A minute outdoors as good as three indoors: cold hands, a short day (our own choice; every caller may set another). */
    public static final double USUAL_WEIGHT = 3;
    /** The plan's own budget and nothing else. */
    public static final SearchTerms USUAL = new SearchTerms(StudyLimits.NONE, USUAL_WEIGHT, 0, 0, 0);
}
