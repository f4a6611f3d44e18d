package coldproof.reason.limiter;

import java.util.List;

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
    /** Work that asks less of the processor: fewer threads, simpler instructions. */
    LIGHTER("lighter load"),
    /** Work that asks more. */
    HEAVIER("heavier load"),
    /** Something else. */
    OTHER("other change");

    /** The changes that together tell all hypotheses apart, cheapest to make first. */
    static final List<ChangeKind> DISCRIMINATING = List.of(COOLED, LIGHTER, SOURCE, COLDER);

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
        return switch (this) {
            case SOURCE -> whenSourceChanged(hypothesis, quantity);
            case LIGHTER -> whenLightened(hypothesis, quantity);
            case HEAVIER -> whenLoaded(hypothesis, quantity);
            case COLDER, WARMER, COOLED, HINDERED, OTHER -> whenOther(hypothesis, quantity);
        };
    }

    private Cell whenCooled(Hypothesis hypothesis, Quantity quantity) {
        if (quantity == Quantity.FAN) {
            return this == COLDER ? Cell.staysOrFalls(quantity) : Cell.FREE; // a fan that was made faster says nothing of why
        }
        return switch (hypothesis) {
            case HEAT -> quantity == Quantity.DIE ? Cell.staysOrFalls(quantity) : Cell.rises(quantity);
            case POWER -> switch (quantity) {
                case DIE -> Cell.falls(quantity);
                case POWER -> Cell.staysOrFalls(quantity);
                case CLOCK, PERFORMANCE -> Cell.fewPercent();
                case FAN -> Cell.FREE;
            };
            case CLOCK -> switch (quantity) {
                case DIE -> Cell.falls(quantity);
                case POWER -> Cell.staysOrFalls(quantity);
                case CLOCK, PERFORMANCE -> Cell.stays(quantity);
                case FAN -> Cell.FREE;
            };
            case SUPPLY -> switch (quantity) {
                case DIE -> Cell.falls(quantity);
                case POWER -> Cell.staysOrFalls(quantity);
                case CLOCK, PERFORMANCE -> new Cell("stays, or falls in the cold", Double.NEGATIVE_INFINITY, Cell.fewPercent().high());
                case FAN -> Cell.FREE;
            };
            case WORKLOAD -> quantity == Quantity.PERFORMANCE ? Cell.stays(quantity) : Cell.FREE;
        };
    }

    private Cell whenHindered(Hypothesis hypothesis, Quantity quantity) {
        if (quantity == Quantity.FAN) {
            return this == WARMER ? Cell.staysOrRises(quantity) : Cell.FREE;
        }
        return switch (hypothesis) {
            case HEAT -> quantity == Quantity.DIE ? new Cell("stays at its limit", -StudyLimits.BELOW_LIMIT, StudyLimits.BELOW_LIMIT) : Cell.falls(quantity);
            case POWER, CLOCK -> switch (quantity) {
                case DIE -> Cell.rises(quantity);
                case POWER -> hypothesis == Hypothesis.POWER ? Cell.staysOrFalls(quantity) : Cell.FREE;
                case CLOCK, PERFORMANCE -> hypothesis == Hypothesis.CLOCK ? Cell.staysOrFalls(quantity)
                        : new Cell("falls, or changes by a few per cent", Double.NEGATIVE_INFINITY, Cell.fewPercent().high());
                case FAN -> Cell.FREE;
            };
            case SUPPLY -> quantity == Quantity.DIE ? Cell.rises(quantity) : Cell.FREE;
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

    /** Other work has another score: nothing is predicted of performance. */
    private static Cell whenLightened(Hypothesis hypothesis, Quantity quantity) {
        return switch (quantity) {
            case PERFORMANCE -> Cell.FREE;
            case FAN -> Cell.staysOrFalls(quantity);
            case DIE -> hypothesis == Hypothesis.CLOCK ? Cell.falls(quantity) : Cell.staysOrFalls(quantity);
            case POWER -> hypothesis == Hypothesis.CLOCK ? Cell.falls(quantity) : Cell.staysOrFalls(quantity);
            case CLOCK -> switch (hypothesis) {
                case HEAT, POWER, SUPPLY -> Cell.rises(quantity);
                case CLOCK -> Cell.stays(quantity);
                case WORKLOAD -> Cell.FREE;
            };
        };
    }

    private static Cell whenLoaded(Hypothesis hypothesis, Quantity quantity) {
        return switch (quantity) {
            case PERFORMANCE -> Cell.FREE;
            case FAN -> Cell.staysOrRises(quantity);
            case DIE -> hypothesis == Hypothesis.HEAT ? Cell.stays(quantity) : Cell.FREE;
            case POWER -> hypothesis == Hypothesis.POWER || hypothesis == Hypothesis.SUPPLY ? Cell.staysOrFalls(quantity) : Cell.FREE;
            case CLOCK -> switch (hypothesis) {
                case HEAT, POWER, SUPPLY -> Cell.falls(quantity);
                case CLOCK -> Cell.staysOrFalls(quantity);
                case WORKLOAD -> Cell.FREE;
            };
        };
    }

    private static Cell whenOther(Hypothesis hypothesis, Quantity quantity) {
        return hypothesis == Hypothesis.WORKLOAD && quantity == Quantity.PERFORMANCE ? Cell.stays(quantity) : Cell.FREE;
    }
}
