package coldproof.stats.randomisation;

/** The restrictions that need no numbers. */
enum PlainRestriction implements Restriction {
    /** Every order. */
    NONE {
        @Override
        public boolean allows(boolean[] isAgainst) {
            return true;
        }
    },
    /** Levels mixed in time. */
    NOT_SEPARATED {
        @Override
        public boolean allows(boolean[] isAgainst) {
            int changes = 0;
            for (int i = 1; i < isAgainst.length; i++) {
                changes += isAgainst[i] == isAgainst[i - 1] ? 0 : 1;
            }
            return isAgainst.length <= 2 || changes > 1;
        }
    }
}
