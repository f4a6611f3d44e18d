package coldproof.face.console;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.util.ArrayList;
import java.util.List;

/** Splits a line into words: at spaces, but not inside quotes. A backslash is a character like any other, so that file names stay whole. */
final class Words {
    private Words() {}

    /**
     * The words of a line.
     *
     * @throws Refused if a quote is not closed
     */
    static List<String> of(String line) {
        List<String> words = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        boolean inWord = false;
        char quote = 0;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            boolean opens = quote == 0 && (c == '"' || c == '\'' && !inWord);
            if (opens || c == quote && quote != 0) {
                quote = opens ? c : 0;
                inWord = true;
            } else if (quote == 0 && Character.isWhitespace(c)) {
                if (inWord) {
                    words.add(word.toString());
                }
                word.setLength(0);
                inWord = false;
            } else {
                word.append(c);
                inWord = true;
            }
        }
        if (quote != 0) {
            throw new Refused(Problem.of("the quote " + quote + " is not closed", Place.named("line"), "a second " + quote, "Close it and press Enter again."));
        }
        if (inWord) {
            words.add(word.toString());
        }
        return words;
    }
}
