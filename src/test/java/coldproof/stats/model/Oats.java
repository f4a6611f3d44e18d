package coldproof.stats.model;

import coldproof.stats.DataTable;
import coldproof.stats.model.Strata.Factor;
import coldproof.stats.model.Strata.Line;
import java.util.List;

/** Yates's oats: six blocks, three varieties on whole plots, four amounts of nitrogen on subplots. */
final class Oats {
    private Oats() {}

    static int[] plots(DataTable data) {
        int[] block = data.codes("block");
        int[] whole = data.codes("whole");
        int[] plot = new int[block.length];
        for (int i = 0; i < plot.length; i++) {
            plot[i] = 3 * block[i] + whole[i];
        }
        return plot;
    }

    static List<Line> strata(DataTable data) {
        return Strata.analyse(data.numbers("y"), plots(data), data.codes("block"),
                List.of(new Factor("whole", data.codes("whole"), 3, true), new Factor("sub", data.codes("sub"), 4, false)));
    }

    static DesignMatrix effects(DataTable data) {
        return DesignMatrix.intercept(data.size()).withFactor("whole", data.codes("whole"), 3).withFactor("sub", data.codes("sub"), 4)
                .withInteraction("whole", "sub");
    }
}
