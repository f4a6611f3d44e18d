package coldproof.face.console;

import java.io.IOException;
import java.nio.charset.Charset;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import org.jline.terminal.impl.jni.JniTerminalProvider;
import org.jline.terminal.spi.SystemStream;
import org.jline.utils.InfoCmp;

/** The terminal this process was started from. */
final class SystemTerminal {
    private static final String NAME = "coldproof";
    /** Kinds whose abilities the library knows by heart: no other program need be asked for them, which takes 15 ms. */
    private static final Set<String> KNOWN = Set.of("xterm", "xterm-256color", "screen", "screen-256color", "rxvt", "rxvt-unicode", "rxvt-unicode-256color");

    /** Classes met only at a terminal, which the walk for the archive of classes has not. */
    private static final List<String> MET_AT_A_TERMINAL = List.of("org.jline.terminal.impl.jni.JniTerminalProvider",
            "org.jline.terminal.impl.jni.JniUnixSysTerminal", "org.jline.terminal.impl.jni.JniNativePty", "org.jline.terminal.impl.AbstractUnixSysTerminal",
            "org.jline.terminal.impl.AbstractPty", "org.jline.terminal.impl.AbstractPosixTerminal", "org.jline.terminal.impl.TermiosMapping",
            "org.jline.terminal.impl.TermiosData", "org.jline.terminal.impl.SignalInterceptingInputStream", "org.jline.terminal.spi.Pty",
            "org.jline.terminal.spi.SystemStream", "org.jline.nativ.JLineNativeLoader", "org.jline.nativ.OSInfo", "org.jline.nativ.CLibrary",
            "org.jline.nativ.CLibrary$Termios", "org.jline.nativ.CLibrary$WinSize", "org.jline.utils.Signals", "org.jline.utils.ShutdownHooks",
            "org.jline.utils.ShutdownHooks$Task", "org.jline.utils.PumpThread", "org.jline.utils.FastBufferedOutputStream",
            "org.jline.utils.NonCloseableInputStream", "org.jline.utils.NonCloseableOutputStream");

    private SystemTerminal() {}

    /**
     * Opens it; one that does not know its size is talked to by lines.
     *
     * @throws IOException if there is none
     */
    static Terminal open() throws IOException {
        Terminal terminal = isKnown() ? direct() : builder().build();
        if (terminal.getColumns() > 0) {
            return terminal;
        }
        terminal.close();
        return builder().type(Terminal.TYPE_DUMB).build();
    }

    /** Whether the kind of terminal is known before it is opened: one that can clear a line, among much else. */
    static boolean isKnown() {
        String type = System.getenv("TERM");
        return type != null && KNOWN.contains(type) && !System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("win");
    }

    /** What the builder comes to at such a terminal, without its search for other ways (30 ms). */
    private static Terminal direct() throws IOException {
        String type = System.getenv("TERM");
        InfoCmp.setLoadedInfoCmp(type, InfoCmp.getDefaultInfoCmp(type));
        Charset charset = System.console().charset();
        try {
            return new JniTerminalProvider().sysTerminal(NAME, type, false, charset, charset, charset, true, Terminal.SignalHandler.SIG_DFL, false,
                    SystemStream.Output);
        } catch (IOException | LinkageError noNativePart) { // no native part for this system, or nowhere to unpack it: the builder knows what then
            return builder().build();
        }
    }

    /** Without the question for grapheme clusters, whose answer a terminal that knows nothing of it lets wait for (0.6 s measured). */
    private static TerminalBuilder builder() {
        return TerminalBuilder.builder().name(NAME).system(true).dumb(true).ffm(false).exec(false).graphemeCluster(false);
    }

    /** Loads, without making them ready, the classes met only at a terminal. */
    static void warm() {
        for (String name : MET_AT_A_TERMINAL) {
            try {
                Class.forName(name, false, SystemTerminal.class.getClassLoader());
            } catch (ClassNotFoundException gone) {
                throw new IllegalStateException("the terminal library no longer has " + name + ": correct the list", gone);
            }
        }
    }
}
