package coldproof.plan;

import coldproof.quantity.ConstantWord;

/** How the run order is drawn. Neither ever puts all of one level before all of the other. */
public enum Order {
    /** By lot among all orders. */
    RANDOMISED,
    /** By lot among the orders in which a steady drift favours no level, or hardly. */
    COUNTERBALANCED;

    /** As written in plans. */
    public String word() {
        return ConstantWord.of(this);
    }
}
