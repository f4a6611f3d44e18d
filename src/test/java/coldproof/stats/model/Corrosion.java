package coldproof.stats.model;

import coldproof.stats.model.Strata.Factor;
import coldproof.stats.model.Strata.Line;
import java.util.List;

/**
 * Corrosion resistance of steel bars with four coatings in six furnace runs at three temperatures: G. E. P. Box, J. S. Hunter, W. G. Hunter,
 * Statistics for Experimenters, 2nd ed. (2005), ch. 9.
 */
final class Corrosion {
    static final double[] RESISTANCE = {
        67, 73, 83, 89, 65, 91, 87, 86, 155, 127, 147, 212, 108, 100, 90, 153, 140, 142, 121, 150, 33, 8, 46, 54
    };
    /** 360, 370, 380, 380, 370, 360 degrees: level 0, 1, 2. */
    static final int[] TEMPERATURE = {0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2, 1, 1, 1, 1, 0, 0, 0, 0};
    static final int[] FURNACE = {0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5};
    static final int[] COATING = {0, 1, 2, 3, 0, 1, 2, 3, 0, 1, 2, 3, 0, 1, 2, 3, 0, 1, 2, 3, 0, 1, 2, 3};

    private Corrosion() {}

    static List<Line> strata() {
        return Strata.analyse(RESISTANCE, FURNACE,
                List.of(new Factor("temperature", TEMPERATURE, 3, true), new Factor("coating", COATING, 4, false)));
    }

    static DesignMatrix effects() {
        return DesignMatrix.intercept(24).withFactor("temperature", TEMPERATURE, 3).withFactor("coating", COATING, 4)
                .withInteraction("temperature", "coating");
    }
}
