package coldproof.stats;

/** Which results count against "no difference". */
public enum Tail {
    /** Only results in the direction looked for; the whole false-alarm rate lies on that side. */
    ONE,
    /** Results in either direction; half of the false-alarm rate lies on each side. */
    TWO;

    /** Share of the false-alarm rate that lies on one side. */
    public double perSide(double falseAlarm) {
        return this == TWO ? 0.5 * falseAlarm : falseAlarm;
    }
}
