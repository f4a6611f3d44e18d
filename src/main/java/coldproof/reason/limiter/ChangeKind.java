package coldproof.reason.limiter;

/** A change of one factor, as the hypotheses see it. */
enum ChangeKind {
    /** The air got colder. */
    COLDER("colder air"),
    /** The air got warmer. */
    WARMER("warmer air"),
    /** The fan was made faster, or heat leaves more easily. */
    COOLED("better cooling"),
    /** The fan was slowed, or heat leaves less easily. */
    HINDERED("poorer cooling"),
    /** Other power source. */
    SOURCE("other power source"),
    /** Something else. */
    OTHER("other change");

    private final String words;

    ChangeKind(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    boolean helpsCooling() {
        return this == COLDER || this == COOLED;
    }

    boolean hindersCooling() {
        return this == WARMER || this == HINDERED;
    }

    /** What the hypothesis, holding before the change, predicts for a quantity. */
    Cell cell(Hypothesis hypothesis, Quantity quantity) {
        if (helpsCooling()) {
            return whenCooled(hypothesis, quantity);
        }
        if (hindersCooling()) {
            return whenHindered(hypothesis, quantity);
        }
        return this == SOURCE ? whenSourceChanged(hypothesis, quantity) : whenOther(hypothesis, quantity);
    }

    private static Cell whenCooled(Hypothesis hypothesis, Quantity quantity) {
        return switch (hypothesis) {
            case HEAT -> quantity == Quantity.DIE ? Cell.staysOrFalls(quantity) : Cell.rises();
            case POWER -> switch (quantity) {
                case DIE -> Cell.falls();
                case POWER -> Cell.staysOrFalls(quantity);
                case CLOCK, PERFORMANCE -> Cell.fewPercent();
            };
            case CLOCK -> switch (quantity) {
                case DIE -> Cell.falls();
                case POWER -> Cell.staysOrFalls(quantity);
                case CLOCK, PERFORMANCE -> Cell.stays(quantity);
            };
            case SUPPLY -> switch (quantity) {
                case DIE -> Cell.falls();
                case POWER -> Cell.staysOrFalls(quantity);
                case CLOCK, PERFORMANCE -> new Cell("stays, or falls in the cold", Double.NEGATIVE_INFINITY, Cell.fewPercent().high());
            };
            case WORKLOAD -> quantity == Quantity.PERFORMANCE ? Cell.stays(quantity) : Cell.FREE;
        };
    }

    private static Cell whenHindered(Hypothesis hypothesis, Quantity quantity) {
        return switch (hypothesis) {
            case HEAT -> quantity == Quantity.DIE ? new Cell("stays at its limit", -StudyLimits.BELOW_LIMIT, StudyLimits.BELOW_LIMIT) : Cell.falls();
            case POWER, CLOCK -> switch (quantity) {
                case DIE -> Cell.rises();
                case POWER -> hypothesis == Hypothesis.POWER ? Cell.staysOrFalls(quantity) : Cell.FREE;
                case CLOCK, PERFORMANCE -> hypothesis == Hypothesis.CLOCK ? Cell.staysOrFalls(quantity)
                        : new Cell("falls, or changes by a few per cent", Double.NEGATIVE_INFINITY, Cell.fewPercent().high());
            };
            case SUPPLY -> quantity == Quantity.DIE ? Cell.rises() : Cell.FREE;
            case WORKLOAD -> quantity == Quantity.PERFORMANCE ? Cell.staysOrFalls(quantity) : Cell.FREE;
        };
    }

    private static Cell whenSourceChanged(Hypothesis hypothesis, Quantity quantity) {
        return switch (hypothesis) {
            case CLOCK -> quantity == Quantity.CLOCK ? Cell.staysOrFalls(quantity) : Cell.FREE;
            case HEAT -> quantity == Quantity.POWER ? Cell.staysOrFalls(quantity) : quantity == Quantity.DIE ? Cell.staysOrFalls(quantity) : Cell.FREE;
            case WORKLOAD -> quantity == Quantity.PERFORMANCE ? Cell.staysOrFalls(quantity) : Cell.FREE;
            case POWER -> quantity == Quantity.POWER ? Cell.staysOrFalls(quantity) : Cell.FREE;
            case SUPPLY -> quantity == Quantity.POWER ? Cell.moves(quantity) : Cell.FREE;
        };
    }

    private static Cell whenOther(Hypothesis hypothesis, Quantity quantity) {
        return hypothesis == Hypothesis.WORKLOAD && quantity == Quantity.PERFORMANCE ? Cell.stays(quantity) : Cell.FREE;
    }
}
