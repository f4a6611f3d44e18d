package coldproof.machine;

import java.util.concurrent.atomic.AtomicBoolean;

/**
 * What to see to when the program is told to end (Ctrl-C, a closed terminal, a shutdown) while something is under way. Java runs it beside
 * whatever the program is doing then, so {@link #begun()} is to be asked before anything is written.
 */
public final class Ending implements AutoCloseable {
    private final AtomicBoolean begun = new AtomicBoolean();
    private final Thread hook;

    private Ending(Runnable task) {
        hook = new Thread(() -> {
            begun.set(true);
            task.run();
        }, "ending");
    }

    /** Sees to it until it is closed. */
    public static Ending watched(Runnable task) {
        Ending ending = new Ending(task);
        try {
            Runtime.getRuntime().addShutdownHook(ending.hook);
        } catch (IllegalStateException late) {
            ending.begun.set(true);
        }
        return ending;
    }

    /** Whether the program is ending. */
    public boolean begun() {
        return begun.get();
    }

    @Override
    public void close() {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException ending) {
            begun.set(true); // it is on its way: there is nothing left to take away
        }
    }
}
