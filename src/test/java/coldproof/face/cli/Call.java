package coldproof.face.cli;

import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;

/** A call of the command line inside the test's own process: what it said, and how it ended. */
record Call(int status, String out, String err) {
    static Call of(String... words) {
        return typing("", words);
    }

    static Call typing(String typed, String... words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Streams streams = new Streams(new BufferedReader(new StringReader(typed)), new PrintWriter(out), new PrintWriter(err), false, 80, false);
        int status = new CommandLineFace(streams).run(words);
        return new Call(status, out.toString(), err.toString());
    }
}
