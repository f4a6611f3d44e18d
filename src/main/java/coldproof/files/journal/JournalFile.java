package coldproof.files.journal;

import coldproof.study.Event;
import coldproof.study.JournalMended;
import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The file behind a journal: appends whole lines or nothing.
 *
 * <p>After a failure nothing that the system says about the open file is believed: the next append opens it again, sees that what was
 * recorded is still there, cuts off what the failed attempt left and writes the line anew. (After a failed force a system may forget that
 * pages were never written; only writing them again makes the next force mean something.)
 */
final class JournalFile implements Closeable {
    private final Disk disk;
    private final Path path;
    private Disk.OpenFile file;
    private long length;
    private byte[] recorded;
    private Optional<Head> head = Optional.empty();
    private Optional<Disk.OpenFile> headFile = Optional.empty();
    private Optional<IOException> headTrouble = Optional.empty();
    private byte[] attempted = new byte[0];
    private byte[] lastLine = new byte[0];
    private boolean failed;

    private JournalFile(Disk disk, Path path, Disk.OpenFile file, byte[] content) {
        this.disk = disk;
        this.path = path;
        this.file = file;
        this.recorded = content;
        this.length = content.length;
    }

    /** Opens a file, or makes it if there is none. */
    static JournalFile open(Disk disk, Path path) throws IOException {
        if (!disk.exists(path)) {
            return create(disk, path);
        }
        Optional<Head> head = Head.read(disk, path);
        byte[] content = disk.read(path);
        Disk.OpenFile opened = disk.open(path);
        try {
            disk.forceFolder(folder(path)); // whoever made or copied the file may have been stopped before its name was durable
        } catch (IOException e) {
            close(opened, e);
            throw e;
        }
        JournalFile file = new JournalFile(disk, path, opened, content);
        file.head = head;
        return file;
    }

    /** Makes a new, empty file whose name is durable. */
    static JournalFile create(Disk disk, Path path) throws IOException {
        Disk.OpenFile file = disk.create(path);
        try {
            file.force();
            disk.forceFolder(folder(path));
        } catch (IOException e) {
            close(file, e);
            throw e;
        }
        return new JournalFile(disk, path, file, new byte[0]);
    }

    private static Path folder(Path path) {
        return path.toAbsolutePath().getParent();
    }

    private static void close(Disk.OpenFile file, IOException because) {
        try {
            file.close();
        } catch (IOException e) {
            because.addSuppressed(e);
        }
    }

    Path path() {
        return path;
    }

    /** What the file held when it was opened. */
    Reading reading() {
        return JournalReader.of(path.getFileName().toString(), recorded, head);
    }

    /**
     * Sets aside a last line that was cut short, or adds a missing line break.
     *
     * @return what to record about it, and about acknowledged entries missing from the end; empty when the file ended well
     */
    List<Event> mendTail(Reading reading) throws IOException {
        List<Event> mended = new ArrayList<>();
        length = reading.wholeLength();
        lastLine = Arrays.copyOfRange(recorded, (int) Math.max(0, length - Line.TAIL), (int) length);
        if (reading.tornTail().isPresent()) {
            Span torn = reading.tornTail().get();
            String aside = setAside(Arrays.copyOfRange(recorded, torn.from(), torn.to()), reading.nextSequence());
            file.truncate(length);
            file.force();
            mended.add(new JournalMended("the last line was cut short after " + torn.length()
                    + " bytes and was never acknowledged; it was set aside", Optional.of(aside)));
        } else if (reading.lastLineBreakMissing()) {
            write(new byte[] {'\n'});
            mended.add(new JournalMended("the line break after the last entry was missing and was added", Optional.empty()));
        }
        for (Damage damage : reading.damages()) {
            if (damage.kind() == Damage.Kind.END_MISSING || damage.kind() == Damage.Kind.REPLACED) {
                mended.add(new JournalMended("line " + damage.line() + ": " + damage.text(), Optional.empty()));
            }
        }
        recorded = new byte[0];
        return mended;
    }

    private String setAside(byte[] torn, long sequence) throws IOException {
        String name = path.getFileName() + ".torn-" + sequence;
        int copy = 1;
        while (disk.exists(path.resolveSibling(name))) {
            copy++;
            name = path.getFileName() + ".torn-" + sequence + "-" + copy;
        }
        try (Disk.OpenFile aside = disk.create(path.resolveSibling(name))) {
            aside.write(0, ByteBuffer.wrap(torn));
            aside.force();
        }
        disk.forceFolder(folder(path));
        return name;
    }

    /** Writes a line and forces it; on failure the file is as it was, at the latest when the next line is appended. */
    void append(byte[] line) throws IOException {
        if (failed) {
            openAgain();
        }
        failed = true; // until proven otherwise
        if (file.length() != length || !file.isStillNamed()) {
            throw new ChangedByAnother();
        }
        write(line);
        failed = false;
    }

    private void write(byte[] line) throws IOException {
        attempted = line;
        try {
            file.write(length, ByteBuffer.wrap(line));
            file.force();
            if (!file.isStillNamed()) {
                throw new ChangedByAnother();
            }
        } catch (IOException e) {
            cutBack(e);
            throw e;
        }
        length += line.length;
        lastLine = line;
        attempted = new byte[0];
    }

    /** Tries to leave no trace of a failed write at once; if that fails too, {@link #openAgain} will do it. */
    private void cutBack(IOException because) {
        try {
            file.truncate(length);
        } catch (IOException e) {
            because.addSuppressed(e);
        }
    }

    private void openAgain() throws IOException {
        Optional<IOException> closing = closeBroken();
        byte[] now = disk.read(path);
        int end = (int) length;
        if (now.length < end || !Arrays.equals(lastLine, Arrays.copyOfRange(now, end - lastLine.length, end)) || !isLeftOver(now, end)) {
            ChangedByAnother changed = new ChangedByAnother();
            closing.ifPresent(changed::addSuppressed);
            throw changed;
        }
        file = disk.open(path);
        file.truncate(length);
    }

    /** What a broken file says on closing does not decide anything: its content is read again, and that does. */
    private Optional<IOException> closeBroken() {
        try {
            file.close();
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of(e);
        }
    }

    /** Whether all behind the recorded lines is what the failed attempt can have left: its bytes, or zeros for bytes not written yet. */
    private boolean isLeftOver(byte[] now, int end) {
        if (now.length - end > attempted.length) {
            return false;
        }
        for (int i = end; i < now.length; i++) {
            if (now[i] != 0 && now[i] != attempted[i - end]) {
                return false;
            }
        }
        return true;
    }

    /** Notes the last entry acknowledged. Failing to is no failure of the entry: it is on the medium. */
    void moveHead(Head to) {
        try {
            if (headFile.isEmpty()) {
                headFile = Optional.of(Head.open(disk, path));
            }
            headFile.get().write(0, to.bytes());
            headTrouble = Optional.empty();
        } catch (IOException e) {
            headFile.ifPresent(broken -> close(broken, e));
            headFile = Optional.empty();
            headTrouble = Optional.of(e);
        }
    }

    /** Why the last entry could not be noted, if so. */
    Optional<IOException> headTrouble() {
        return headTrouble;
    }

    @Override
    public void close() throws IOException {
        try {
            if (headFile.isPresent()) {
                headFile.get().close();
            }
        } finally {
            file.close();
        }
    }

    /** Another program has replaced, renamed or written the file while it was open. */
    static final class ChangedByAnother extends IOException {
        private static final long serialVersionUID = 1L;

        ChangedByAnother() {
            super("another program has replaced, moved or changed it while it was open");
        }
    }
}
