package coldproof.reason.rehearse.bench;

/** How the air strays from its plan during one session. */
final class AirPath {
    private final Weather weather;
    private final NormalDraws draws;
    private final double share;
    private final double offset;
    private final double slopePerSecond;
    private double wander;

    AirPath(Weather weather, boolean outdoors, NormalDraws draws) {
        this.weather = weather;
        this.draws = draws;
        share = outdoors ? 1 : weather.indoorShare();
        offset = weather.offsetSdKelvins() > 0 ? weather.offsetSdKelvins() * draws.next() : 0;
        slopePerSecond = weather.slopeSdKelvinsPerHour() > 0 ? weather.slopeSdKelvinsPerHour() / 3600 * draws.next() : 0;
        wander = weather.wanderSdKelvins() > 0 ? draws.next() : 0;
    }

    /** Lets the wandering part go on for some seconds; exact for a first-order autoregressive path whatever the step. */
    void advance(double seconds) {
        if (weather.wanderSdKelvins() > 0) {
            double kept = Math.exp(-seconds / weather.wanderSeconds());
            wander = kept * wander + Math.sqrt(1 - kept * kept) * draws.next();
        }
    }

    /** How far the air is from its plan, K. */
    double strayKelvins(double sessionSeconds) {
        return share * (offset + slopePerSecond * sessionSeconds + weather.wanderSdKelvins() * wander);
    }
}
