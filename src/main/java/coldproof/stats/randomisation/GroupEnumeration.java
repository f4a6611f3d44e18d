package coldproof.stats.randomisation;

/** Goes through all ways to choose a fixed number of items, depth first, so that every sum is built from its own items only. */
final class GroupEnumeration {
    /** Receives one choice. */
    @FunctionalInterface
    interface Visitor {
        /** The sums of the two weights over the chosen items, and the choice itself, which must not be changed or kept. */
        void accept(double sum, double overlap, boolean[] isChosen);
    }

    private final double[] first;
    private final double[] second;
    private final boolean[] isChosen;
    private final Visitor visitor;

    private GroupEnumeration(double[] first, double[] second, Visitor visitor) {
        this.first = first;
        this.second = second;
        this.visitor = visitor;
        isChosen = new boolean[first.length];
    }

    static void visit(double[] first, double[] second, int choose, Visitor visitor) {
        new GroupEnumeration(first, second, visitor).from(0, choose, 0, 0);
    }

    private void from(int item, int left, double sum, double overlap) {
        if (left == 0) {
            visitor.accept(sum, overlap, isChosen);
            return;
        }
        for (int i = item; i <= first.length - left; i++) {
            isChosen[i] = true;
            from(i + 1, left - 1, sum + first[i], overlap + second[i]);
            isChosen[i] = false;
        }
    }
}
