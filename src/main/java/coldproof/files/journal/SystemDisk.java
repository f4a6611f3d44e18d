package coldproof.files.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** The file system of this computer. */
public final class SystemDisk implements Disk {
    @Override
    public boolean exists(Path path) {
        return Files.exists(path);
    }

    @Override
    public byte[] read(Path file) throws IOException {
        return Files.readAllBytes(file);
    }

    @Override
    public OpenFile open(Path file) throws IOException {
        return new ChannelFile(file, FileChannel.open(file, StandardOpenOption.WRITE));
    }

    @Override
    public OpenFile create(Path file) throws IOException {
        return new ChannelFile(file, FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW));
    }

    @Override
    public void createFolder(Path folder) throws IOException {
        Files.createDirectories(folder);
    }

    @Override
    public void rename(Path from, Path to) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    /** On systems where a folder cannot be opened (Windows), names are made durable by the file system itself. */
    @Override
    public void forceFolder(Path folder) throws IOException {
        FileChannel channel;
        try {
            channel = FileChannel.open(folder, StandardOpenOption.READ);
        } catch (IOException e) {
            if (Files.isDirectory(folder) && java.io.File.separatorChar == '\\') {
                return;
            }
            throw e;
        }
        try (channel) {
            channel.force(true);
        }
    }

    @Override
    public List<String> list(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Override
    public long usableBytes(Path path) throws IOException {
        return Files.getFileStore(path).getUsableSpace();
    }

    /** A channel and the name it was opened by. */
    private static final class ChannelFile implements OpenFile {
        private final Path file;
        private final FileChannel channel;
        private final Object key;

        private ChannelFile(Path file, FileChannel channel) throws IOException {
            this.file = file;
            this.channel = channel;
            this.key = key();
        }

        /** What tells files apart, where the system has it; null elsewhere. */
        private Object key() throws IOException {
            return Files.readAttributes(file, BasicFileAttributes.class).fileKey();
        }

        @Override
        public long length() throws IOException {
            return channel.size();
        }

        @Override
        public void write(long at, ByteBuffer bytes) throws IOException {
            long place = at;
            while (bytes.hasRemaining()) {
                place += channel.write(bytes, place);
            }
        }

        @Override
        public void truncate(long length) throws IOException {
            channel.truncate(length);
        }

        @Override
        public void force() throws IOException {
            channel.force(true);
        }

        @Override
        public boolean isStillNamed() throws IOException {
            try {
                return Objects.equals(key, key()) && Files.size(file) == channel.size();
            } catch (NoSuchFileException e) {
                return false;
            }
        }

        @Override
        public void close() throws IOException {
            channel.close();
        }
    }
}
