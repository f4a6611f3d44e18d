package coldproof.files.table;

import coldproof.quantity.QuantityText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/** Finds columns by the names people give them. */
final class ColumnNames {
    private static final int MOST_OF_ONE_NAME = 9999;

    private ColumnNames() {}

    /** Numbers of the columns the name may mean, by the rules of {@link Table#column}; empty when there is none. */
    static List<Integer> find(List<String> columns, String wanted) {
        List<Integer> found = matching(columns, wanted.strip(), false, false);
        if (found.isEmpty()) {
            found = matching(columns, wanted.strip(), true, false);
        }
        if (found.isEmpty()) {
            found = matching(columns, folded(wanted), true, true);
        }
        int sign = wanted.lastIndexOf('#');
        if (!found.isEmpty() || sign <= 0) {
            return found;
        }
        OptionalInt index = QuantityText.whole(wanted.substring(sign + 1), 1, MOST_OF_ONE_NAME);
        List<Integer> named = index.isPresent() ? find(columns, wanted.substring(0, sign)) : List.of();
        return index.isPresent() && index.getAsInt() <= named.size() ? List.of(named.get(index.getAsInt() - 1)) : List.of();
    }

    private static List<Integer> matching(List<String> columns, String wanted, boolean anyCase, boolean fold) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            String candidate = fold ? folded(columns.get(i)) : columns.get(i);
            if (anyCase ? candidate.equalsIgnoreCase(wanted) : candidate.equals(wanted)) {
                found.add(i);
            }
        }
        return found;
    }

    private static String folded(String name) {
        String bare = name.strip();
        int bracket = Math.max(bare.lastIndexOf('['), bare.lastIndexOf('('));
        if (bracket > 0) {
            bare = bare.substring(0, bracket);
        }
        StringBuilder letters = new StringBuilder();
        for (char c : bare.toLowerCase(Locale.ROOT).toCharArray()) {
            if (Character.isLetterOrDigit(c)) {
                letters.append(c);
            }
        }
        return letters.toString();
    }
}
