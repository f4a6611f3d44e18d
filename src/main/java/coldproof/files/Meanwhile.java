package coldproof.files;

import java.util.function.Supplier;

/**
 * Work that another thread does meanwhile. Reading a study is quick work done once by a Java that has only just started, where every line of code
 * runs for the first time: two threads side by side take little more than half the time of one.
 *
 * @param <T> what comes of it
 */
public final class Meanwhile<T> implements Supplier<T> {
    private final Worker worker;
    private T result;
    private RuntimeException refused;
    private Error broken;

    private Meanwhile(String name, Supplier<T> work) {
        worker = new Worker(name, work);
    }

    /** Begins the work; the name is that of the thread. */
    public static <T> Meanwhile<T> of(String name, Supplier<T> work) {
        Meanwhile<T> meanwhile = new Meanwhile<>(name, work);
        meanwhile.worker.start();
        return meanwhile;
    }

    /** The thread; one that a lambda ran would first wait for the first lambda of the program, which takes four milliseconds. */
    private final class Worker extends Thread {
        private final Supplier<T> work;

        private Worker(String name, Supplier<T> work) {
            super(name);
            this.work = work;
            setDaemon(true);
        }

        @Override
        public void run() {
            try {
                result = work.get();
            } catch (RuntimeException e) {
                refused = e;
            } catch (Error e) {
                broken = e; // whoever asks for the result is to know, whatever it is
            }
        }
    }

    /**
     * What came of it; waits until it is done, also when interrupted: it is over in a moment, and whoever interrupts is heard then. Whatever the
     * work threw is thrown here.
     */
    @Override
    public T get() {
        boolean interrupted = false;
        while (worker.isAlive()) {
            try {
                worker.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        if (refused != null) {
            throw refused;
        }
        if (broken != null) {
            throw broken;
        }
        return result;
    }
}
