package coldproof.face.cli;

/** A line on the channel for messages that is written over at a terminal; elsewhere each text is a line of its own. */
final class LiveLine {
    private final Streams streams;
    private int written;

    LiveLine(Streams streams) {
        this.streams = streams;
    }

    /** Shows a text instead of the one before, cut to what fits; an empty one clears the line. */
    synchronized void show(String text) {
        if (streams.interactive()) {
            String cut = text.length() < streams.columns() ? text : text.substring(0, streams.columns() - 1);
            streams.err().print("\r" + cut + " ".repeat(Math.max(0, written - cut.length())) + (cut.isEmpty() ? "\r" : ""));
            written = cut.length();
        } else {
            streams.err().print(text + "\n");
        }
        streams.err().flush();
    }

    /** Leaves what is shown and goes to the next line. */
    synchronized void end() {
        if (written > 0) {
            streams.err().println();
            streams.err().flush();
            written = 0;
        }
    }
}
