package coldproof.quantity;

/**
 * Where in a text something stands.
 *
 * @param file name as the person knows it, or a word such as {@code --effect} for an option
 * @param line first is 1; 0 when there are no lines (an option)
 * @param column first is 1; 0 when not known
 * @param excerpt the line itself, empty when not known
 * @param width how many characters are wrong, 0 when not known
 */
public record Place(String file, int line, int column, String excerpt, int width) {
    /** A place in a file whose line is not quoted. */
    public static Place of(String file, int line, int column) {
        return new Place(file, line, column, "", 0);
    }

    /** A whole file, an option or an argument. */
    public static Place named(String name) {
        return new Place(name, 0, 0, "", 0);
    }

    /** {@code file:line:column}, as far as known. */
    public String text() {
        if (line == 0) {
            return file;
        }
        return column == 0 ? file + ":" + line : file + ":" + line + ":" + column;
    }
}
