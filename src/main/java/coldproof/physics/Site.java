package coldproof.physics;

/**
 * A place on the earth.
 *
 * @param latitudeDegrees north positive, in [-90, 90]
 * @param longitudeDegrees east positive, in [-180, 180]
 */
public record Site(double latitudeDegrees, double longitudeDegrees) {
    /** Refuses what is on no map, NaN included. */
    public Site {
        Bounds.within("latitude", latitudeDegrees, -90, 90, "°");
        Bounds.within("longitude", longitudeDegrees, -180, 180, "°");
    }
}
