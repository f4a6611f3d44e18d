package coldproof.face.console;

import java.util.ArrayList;
import java.util.List;

/** Digits five lines high, to be read from a step away. */
final class BigText {
    /** How many lines a big text takes. */
    static final int ROWS = 5;
    private static final String KNOWN = "0123456789/: -";
    private static final String[] SHAPES = {
        " ### #   ##   ##   # ### ", // 0
        "  #   ##    #    #   ### ", // 1
        "####     # ### #    #####", // 2
        "####     # ###     ##### ", // 3
        "#  # #  # #####   #    # ", // 4
        "######    ####     ##### ", // 5
        " ### #    #### #   # ### ", // 6
        "#####   #   #   #    #   ", // 7
        " ### #   # ### #   # ### ", // 8
        " ### #   # ####    # ### ", // 9
        "    #   #   #   #   #    ", // /
        "       #         #       ", // :
        "                         ", // space
        "           ###           ", // -
    };
    private static final int WIDTH = 5;

    private BigText() {}

    /** Columns that a text takes. */
    static int columns(String text) {
        return Math.max(0, text.length() * (WIDTH + 1) - 1);
    }

    /**
     * The text in big.
     *
     * @param text digits, slash, colon, space and minus only
     * @param ink what to draw with
     */
    static List<String> rows(String text, char ink) {
        List<String> rows = new ArrayList<>();
        for (int row = 0; row < ROWS; row++) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < text.length(); i++) {
                line.append(i == 0 ? "" : " ").append(shape(text.charAt(i)), row * WIDTH, (row + 1) * WIDTH);
            }
            rows.add(line.toString().replace('#', ink));
        }
        return rows;
    }

    private static String shape(char c) {
        int index = KNOWN.indexOf(c);
        if (index < 0) {
            throw new IllegalArgumentException("no big shape for " + c);
        }
        return SHAPES[index];
    }
}
