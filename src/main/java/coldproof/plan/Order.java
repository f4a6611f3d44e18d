package coldproof.plan;

/** How the run order is drawn. Neither ever puts all of one level before all of the other. */
public enum Order {
    /** By lot among all orders. */
    RANDOMISED("randomised"),
    /** By lot among the orders in which a steady drift favours no level, or hardly. */
    COUNTERBALANCED("counterbalanced");

    private final String word;

    Order(String word) {
        this.word = word;
    }

    /** As written in plans. */
    public String word() {
        return word;
    }
}
