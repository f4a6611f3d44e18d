package coldproof.files.journal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedChannelException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every disk keeps to, the real one and the fake alike. */
abstract class DiskContract {
    private Disk disk;
    private Path folder;
    private Path file;

    abstract Disk disk();

    /** A folder that is there. */
    abstract Path folder();

    @BeforeEach
    void names() throws IOException {
        disk = disk();
        folder = folder();
        file = folder.resolve("a.jsonl");
    }

    private static ByteBuffer bytes(String text) {
        return ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
    }

    private void make(Path path, String text) throws IOException {
        try (Disk.OpenFile made = disk.create(path)) {
            made.write(0, bytes(text));
            made.force();
        }
    }

    private String text(Path path) throws IOException {
        return new String(disk.read(path), StandardCharsets.UTF_8);
    }

    @Test
    void whatIsWrittenIsRead() throws IOException {
        make(file, "one\ntwo\n");
        assertArrayEquals("one\ntwo\n".getBytes(StandardCharsets.UTF_8), disk.read(file));
    }

    @Test
    void aNewFileIsEmptyAndThere() throws IOException {
        assertFalse(disk.exists(file));
        try (Disk.OpenFile made = disk.create(file)) {
            assertEquals(0, made.length());
        }
        assertTrue(disk.exists(file));
    }

    @Test
    void aNameIsNotMadeTwice() throws IOException {
        make(file, "one");
        assertThrows(FileAlreadyExistsException.class, () -> disk.create(file));
        assertEquals("one", text(file));
    }

    @Test
    void whatIsNotThereIsNotOpenedAndNotRead() {
        assertThrows(NoSuchFileException.class, () -> disk.open(file));
        assertThrows(NoSuchFileException.class, () -> disk.read(file));
    }

    @Test
    void nothingIsMadeInAFolderThatIsNotThere() {
        assertThrows(NoSuchFileException.class, () -> disk.create(folder.resolve("nowhere").resolve("a")));
    }

    @Test
    void openingKeepsTheContent() throws IOException {
        make(file, "one\n");
        try (Disk.OpenFile opened = disk.open(file)) {
            assertEquals(4, opened.length());
            opened.write(4, bytes("two\n"));
        }
        assertEquals("one\ntwo\n", text(file));
    }

    @Test
    void writingOverKeepsWhatLiesBehind() throws IOException {
        make(file, "one two");
        try (Disk.OpenFile opened = disk.open(file)) {
            opened.write(0, bytes("ONE"));
        }
        assertEquals("ONE two", text(file));
    }

    @Test
    void cuttingShortensAndNeverLengthens() throws IOException {
        make(file, "one two");
        try (Disk.OpenFile opened = disk.open(file)) {
            opened.truncate(3);
            opened.truncate(99);
            assertEquals(3, opened.length());
        }
        assertEquals("one", text(file));
    }

    @Test
    void renamingReplacesInOneStep() throws IOException {
        Path other = folder.resolve("b.jsonl");
        make(file, "old");
        make(other, "new");
        disk.rename(other, file);
        assertEquals("new", text(file));
        assertFalse(disk.exists(other));
    }

    @Test
    void aFileReplacedWhileOpenIsNoLongerTheOneNamed() throws IOException {
        Path other = folder.resolve("b.jsonl");
        make(file, "old");
        make(other, "new");
        try (Disk.OpenFile opened = disk.open(file)) {
            assertTrue(opened.isStillNamed());
            disk.rename(other, file);
            assertFalse(opened.isStillNamed());
        }
    }

    @Test
    void aFileMovedWhileOpenIsNoLongerNamed() throws IOException {
        make(file, "old");
        try (Disk.OpenFile opened = disk.open(file)) {
            disk.rename(file, folder.resolve("b.jsonl"));
            assertFalse(opened.isStillNamed());
        }
    }

    @Test
    void aClosedFileIsNotWrittenAndMayBeClosedAgain() throws IOException {
        Disk.OpenFile made = disk.create(file);
        made.close();
        made.close();
        assertThrows(ClosedChannelException.class, () -> made.write(0, bytes("late")));
        assertThrows(ClosedChannelException.class, made::force);
        assertThrows(ClosedChannelException.class, made::length);
    }

    @Test
    void filesAreListedByName() throws IOException {
        make(folder.resolve("b"), "");
        make(folder.resolve("a"), "");
        assertEquals(List.of("a", "b"), disk.list(folder));
        assertThrows(NoSuchFileException.class, () -> disk.list(folder.resolve("nowhere")));
    }

    @Test
    void aFolderIsMadeWithItsParentsAndMadeAgainWithoutHarm() throws IOException {
        Path deep = folder.resolve("x").resolve("y");
        disk.createFolder(deep);
        make(deep.resolve("a"), "one");
        disk.createFolder(deep);
        disk.forceFolder(deep);
        assertEquals("one", text(deep.resolve("a")));
    }

    @Test
    void thereIsRoomToBeAskedFor() throws IOException {
        assertTrue(disk.usableBytes(folder) > 0);
    }
}
