package coldproof.files.journal;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiPredicate;
import java.util.random.RandomGenerator;

/**
 * A disk in memory that is as strict as the strictest system and as forgetful as a power cut: {@link #afterPowerCut} keeps only names whose
 * folder was forced and bytes that were forced. Any call can be made to fail; a failing write leaves half of its bytes behind.
 */
final class FakeDisk implements Disk {
    /** What can be asked of a disk. */
    enum Call { EXISTS, READ, OPEN, CREATE, CREATE_FOLDER, RENAME, FORCE_FOLDER, LIST, LENGTH, WRITE, TRUNCATE, FORCE, STILL_NAMED, CLOSE }

    /** One file, whatever names it has. */
    private static final class Content {
        private byte[] bytes = new byte[0];
        private byte[] durable = new byte[0];
    }

    private final Map<Path, Content> names = new TreeMap<>();
    private final Map<Path, Content> durableNames = new TreeMap<>();
    private final Set<Path> folders = new TreeSet<>();
    private final List<Call> calls = new ArrayList<>();
    private BiPredicate<Integer, Call> failing = (number, call) -> false;
    private long capacity = Long.MAX_VALUE;
    private int openFiles;

    /** Calls so far, of those that can fail; the first has number 1. */
    List<Call> calls() {
        return List.copyOf(calls);
    }

    /** Which calls are to fail from now on, by number and kind. */
    void fail(BiPredicate<Integer, Call> which) {
        failing = which;
    }

    void holdAtMost(long bytes) {
        capacity = bytes;
    }

    int openFiles() {
        return openFiles;
    }

    /** Another program changes a file behind the back of whoever has it open. */
    void overwrite(Path file, byte[] bytes) {
        Content content = new Content();
        content.bytes = bytes.clone();
        content.durable = bytes.clone();
        names.put(file, content);
        durableNames.put(file, content);
    }

    void remove(Path file) {
        names.remove(file);
    }

    /**
     * The disk as found after the power went: of bytes not forced, as many as chance wants reached it, from the front on; the rest of the
     * length, where the length did, are zeros.
     */
    FakeDisk afterPowerCut(RandomGenerator random) {
        FakeDisk found = new FakeDisk();
        found.folders.addAll(folders);
        durableNames.forEach((path, content) -> {
            Content kept = new Content();
            kept.bytes = content.durable;
            boolean grewOnly = content.bytes.length > content.durable.length
                    && Arrays.equals(content.durable, Arrays.copyOf(content.bytes, content.durable.length));
            if (grewOnly) {
                int reached = random.nextInt(content.durable.length, content.bytes.length + 1);
                int length = random.nextBoolean() ? reached : random.nextInt(reached, content.bytes.length + 1);
                kept.bytes = Arrays.copyOf(Arrays.copyOf(content.bytes, reached), length);
            } else if (content.bytes.length < content.durable.length && random.nextBoolean()) {
                kept.bytes = content.bytes;
            }
            kept.durable = kept.bytes;
            found.names.put(path, kept);
            found.durableNames.put(path, kept);
        });
        return found;
    }

    private void call(Call call, Path path) throws IOException {
        calls.add(call);
        if (failing.test(calls.size(), call)) {
            throw new IOException("made to fail: " + call + " of " + path.getFileName());
        }
    }

    private Content at(Path file) throws NoSuchFileException {
        Content content = names.get(file);
        if (content == null) {
            throw new NoSuchFileException(file.toString());
        }
        return content;
    }

    private void checkFolder(Path file) throws NoSuchFileException {
        if (!folders.contains(file.getParent())) {
            throw new NoSuchFileException(file.toString());
        }
    }

    @Override
    public boolean exists(Path path) throws IOException {
        call(Call.EXISTS, path);
        return names.containsKey(path) || folders.contains(path);
    }

    @Override
    public byte[] read(Path file) throws IOException {
        call(Call.READ, file);
        return at(file).bytes.clone();
    }

    @Override
    public OpenFile open(Path file) throws IOException {
        call(Call.OPEN, file);
        return new FakeFile(file, at(file));
    }

    @Override
    public OpenFile create(Path file) throws IOException {
        call(Call.CREATE, file);
        checkFolder(file);
        if (names.containsKey(file)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        names.put(file, new Content());
        return new FakeFile(file, at(file));
    }

    @Override
    public void createFolder(Path folder) throws IOException {
        call(Call.CREATE_FOLDER, folder);
        for (Path each = folder; each != null; each = each.getParent()) {
            folders.add(each);
        }
    }

    @Override
    public void rename(Path from, Path to) throws IOException {
        call(Call.RENAME, from);
        checkFolder(to);
        names.put(to, at(from));
        names.remove(from);
    }

    @Override
    public void forceFolder(Path folder) throws IOException {
        call(Call.FORCE_FOLDER, folder);
        if (!folders.contains(folder)) {
            throw new NoSuchFileException(folder.toString());
        }
        durableNames.keySet().removeIf(path -> path.getParent().equals(folder));
        names.forEach((path, content) -> {
            if (path.getParent().equals(folder)) {
                durableNames.put(path, content);
            }
        });
    }

    @Override
    public List<String> list(Path folder) throws IOException {
        call(Call.LIST, folder);
        if (!folders.contains(folder)) {
            throw new NoSuchFileException(folder.toString());
        }
        return names.keySet().stream().filter(path -> path.getParent().equals(folder)).map(path -> path.getFileName().toString()).sorted()
                .toList();
    }

    @Override
    public long usableBytes(Path path) {
        return capacity - used();
    }

    /** Bytes in all files. */
    long used() {
        return names.values().stream().mapToLong(content -> content.bytes.length).sum();
    }

    /** An open file; using it after closing is an error, closing it twice is not. */
    private final class FakeFile implements OpenFile {
        private final Path file;
        private Optional<Content> content;

        private FakeFile(Path file, Content content) {
            this.file = file;
            this.content = Optional.of(content);
            openFiles++;
        }

        private Content open() throws ClosedChannelException {
            return content.orElseThrow(ClosedChannelException::new);
        }

        @Override
        public long length() throws IOException {
            call(Call.LENGTH, file);
            return open().bytes.length;
        }

        @Override
        public void write(long at, ByteBuffer bytes) throws IOException {
            Content into = open();
            if (at > into.bytes.length) {
                throw new IllegalArgumentException("a hole: write at " + at + " behind the end at " + into.bytes.length);
            }
            byte[] whole = new byte[bytes.remaining()];
            bytes.get(whole);
            try {
                call(Call.WRITE, file);
            } catch (IOException e) {
                put(into, (int) at, Arrays.copyOf(whole, whole.length / 2));
                throw e;
            }
            long room = capacity - used();
            if (Math.max(0, at + whole.length - into.bytes.length) > room) {
                put(into, (int) at, Arrays.copyOf(whole, (int) Math.max(0, room)));
                throw new IOException("No space left on device");
            }
            put(into, (int) at, whole);
        }

        private static void put(Content into, int at, byte[] bytes) {
            ByteArrayOutputStream all = new ByteArrayOutputStream();
            all.write(into.bytes, 0, at);
            all.write(bytes, 0, bytes.length);
            int behind = at + bytes.length;
            if (behind < into.bytes.length) {
                all.write(into.bytes, behind, into.bytes.length - behind);
            }
            into.bytes = all.toByteArray();
        }

        @Override
        public void truncate(long length) throws IOException {
            call(Call.TRUNCATE, file);
            Content into = open();
            into.bytes = Arrays.copyOf(into.bytes, (int) Math.min(length, into.bytes.length));
        }

        @Override
        public void force() throws IOException {
            call(Call.FORCE, file);
            Content forced = open();
            forced.durable = forced.bytes;
        }

        @Override
        public boolean isStillNamed() throws IOException {
            call(Call.STILL_NAMED, file);
            return names.get(file) == open();
        }

        @Override
        public void close() throws IOException {
            if (content.isPresent()) {
                content = Optional.empty();
                openFiles--;
            }
            call(Call.CLOSE, file);
        }
    }
}
