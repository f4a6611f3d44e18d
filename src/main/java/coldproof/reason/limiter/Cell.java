package coldproof.reason.limiter;

import coldproof.quantity.Interval;

/**
 * One cell of the discriminating table: the range in which a change must lie if the hypothesis holds.
 *
 * @param words what is predicted
 * @param low in log or K
 * @param high in log or K
 * @param outside whether the change must lie outside this range instead
 * @param margin a change that surely lies within this of none is none, and rules out a rise or a fall; 0 where that is not predicted
 */
record Cell(String words, double low, double high, boolean outside, double margin) {
    private static final double ANY = Double.POSITIVE_INFINITY;
    private static final double FEW_PERCENT = Math.log1p(0.06);
    /** Nothing is predicted. */
    static final Cell FREE = new Cell("anything", -ANY, ANY);

    Cell(String words, double low, double high) {
        this(words, low, high, false, 0);
    }

    /** Moves by more than the margin, either way. */
    static Cell moves(Quantity quantity) {
        return new Cell("moves", -quantity.margin(), quantity.margin(), true, 0);
    }

    /** Stays within the margin. */
    static Cell stays(Quantity quantity) {
        return new Cell("stays the same", -quantity.margin(), quantity.margin());
    }

    static Cell rises(Quantity quantity) {
        return new Cell("rises", 0, ANY, false, quantity.margin());
    }

    static Cell falls(Quantity quantity) {
        return new Cell("falls", -ANY, 0, false, quantity.margin());
    }

    static Cell staysOrRises(Quantity quantity) {
        return new Cell("stays or rises", -quantity.margin(), ANY);
    }

    static Cell staysOrFalls(Quantity quantity) {
        return new Cell("stays or falls", -ANY, quantity.margin());
    }

    /** Moves by a few per cent at most, as lower leakage or a raised voltage in the cold make it. */
    static Cell fewPercent() {
        return new Cell("changes by a few per cent at most", -FEW_PERCENT, FEW_PERCENT);
    }

    boolean isFree() {
        return low == -ANY && high == ANY;
    }

    /** Whether the change lies in the range, outside, or cannot be told. */
    Prediction.Result test(Effect effect) {
        if (effect.interval90().isEmpty() || effect.interval95().isEmpty()) {
            return Prediction.Result.UNTESTED;
        }
        Interval moved = effect.interval95().get();
        Interval stayed = effect.interval90().get();
        boolean beyond = moved.low() > high || moved.high() < low;
        boolean within = stayed.low() >= low && stayed.high() <= high;
        if (outside ? within : beyond) {
            return Prediction.Result.RULED_OUT;
        }
        boolean none = stayed.low() >= -margin && stayed.high() <= margin;
        if (margin > 0 && none && moved.low() <= 0 && moved.high() >= 0) {
            return Prediction.Result.RULED_OUT;
        }
        boolean moves = margin > 0 && moved.low() >= low && moved.high() <= high;
        return (outside ? beyond : margin > 0 ? moves : within) ? Prediction.Result.SUPPORTED : Prediction.Result.UNTESTED;
    }
}
