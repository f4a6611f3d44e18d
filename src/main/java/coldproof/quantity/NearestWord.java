package coldproof.quantity;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Finds the valid words a person most likely meant. */
public final class NearestWord {
    private NearestWord() {}

    /**
     * Words within an edit distance of 2, or of a third of the word's length where that is more, nearest first; at most three.
     *
     * <p>The distance counts insertions, deletions, replacements and swaps of neighbours, case folded (optimal string alignment).
     */
    public static List<String> of(String word, Collection<String> valid) {
        String folded = word.toLowerCase(Locale.ROOT);
        int allowed = Math.max(2, word.length() / 3);
        record Near(String word, int distance) {}
        List<Near> near = new ArrayList<>();
        for (String candidate : valid) {
            int distance = distance(folded, candidate.toLowerCase(Locale.ROOT));
            if (distance <= allowed && distance < Math.max(word.length(), candidate.length())) {
                near.add(new Near(candidate, distance));
            }
        }
        near.sort(Comparator.comparingInt(Near::distance).thenComparing(Near::word));
        return near.stream().limit(3).map(Near::word).toList();
    }

    static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            d[i][0] = i;
        }
        for (int j = 0; j <= b.length(); j++) {
            d[0][j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int replace = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                d[i][j] = Math.min(replace, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
                boolean swapped = i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (swapped) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
