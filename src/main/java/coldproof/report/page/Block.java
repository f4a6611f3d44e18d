package coldproof.report.page;

import coldproof.report.plot.Plot;
import coldproof.report.text.Fact;
import java.util.List;

/** A piece of a section. Texts may hold anything a person wrote; whoever writes them out makes them harmless. */
public sealed interface Block {
    /**
     * A paragraph.
     *
     * @param text sentences
     */
    record Prose(String text) implements Block {}

    /**
     * A paragraph that must not be missed.
     *
     * @param word one word before it, such as {@code SIMULATED}
     * @param text sentences
     */
    record Notice(String word, String text) implements Block {}

    /**
     * The answer: the word and its sentence.
     *
     * @param word such as {@code PASS}
     * @param text the verdict in a sentence
     * @param small what stands below it; may be empty
     */
    record Answer(String word, String text, String small) implements Block {}

    /**
     * One of several answers, which may lead to a page of its own.
     *
     * @param word such as {@code PASS}
     * @param title of the other page
     * @param address of the other page in this folder or below, percent-encoded; empty where there is none
     * @param text what is said
     * @param small what stands below it; may be empty
     */
    record Entry(String word, String title, String address, String text, String small) implements Block {}

    /**
     * Labelled lines.
     *
     * @param about what they are about, for those who read the page by program; may be empty
     * @param facts the lines
     */
    record Facts(String about, List<Fact> facts) implements Block {
        /** Copies. */
        public Facts {
            facts = List.copyOf(facts);
        }
    }

    /**
     * A table.
     *
     * @param caption what it shows
     * @param columns its heads
     * @param rows cells by row, as many as columns
     */
    record Grid(String caption, List<Column> columns, List<List<String>> rows) implements Block {
        /** Copies; refuses a row of another length. */
        public Grid {
            columns = List.copyOf(columns);
            rows = rows.stream().map(List::copyOf).toList();
            int width = columns.size();
            if (rows.stream().anyMatch(row -> row.size() != width)) {
                throw new IllegalArgumentException("a row of \"" + caption + "\" has not " + width + " cells");
            }
        }
    }

    /**
     * The head of a column.
     *
     * @param head its words
     * @param number whether it holds numbers
     */
    record Column(String head, boolean number) {
        /** A column of words. */
        public static Column words(String head) {
            return new Column(head, false);
        }

        /** A column of numbers. */
        public static Column numbers(String head) {
            return new Column(head, true);
        }
    }

    /**
     * A plot; where none can be drawn its description stands for it.
     *
     * @param plot what is drawn
     */
    record Drawing(Plot plot) implements Block {}

    /**
     * Text as it stands in a file, line ends kept.
     *
     * @param text the lines
     */
    record Verbatim(String text) implements Block {}

    /**
     * A list.
     *
     * @param items its points
     */
    record Points(List<String> items) implements Block {
        /** Copies. */
        public Points {
            items = List.copyOf(items);
        }
    }
}
