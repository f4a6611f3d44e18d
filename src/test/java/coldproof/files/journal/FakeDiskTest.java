package coldproof.files.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FakeDiskTest extends DiskContract {
    private static final Path FOLDER = Path.of("/study");
    private final FakeDisk fake = new FakeDisk();

    @Override
    Disk disk() {
        return fake;
    }

    @Override
    Path folder() {
        try {
            fake.createFolder(FOLDER);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return FOLDER;
    }

    @Test
    void aPowerCutForgetsANameWhoseFolderWasNotForced() throws IOException {
        try (Disk.OpenFile file = fake.create(FOLDER.resolve("a"))) {
            file.write(0, ByteBuffer.wrap(new byte[] {1}));
            file.force();
        }
        assertFalse(fake.afterPowerCut(new SplittableRandom(1)).exists(FOLDER.resolve("a")));
        fake.forceFolder(FOLDER);
        assertTrue(fake.afterPowerCut(new SplittableRandom(1)).exists(FOLDER.resolve("a")));
    }

    @Test
    void aPowerCutMayForgetBytesThatWereNotForced() throws IOException {
        Path path = FOLDER.resolve("a");
        try (Disk.OpenFile file = fake.create(path)) {
            fake.forceFolder(FOLDER);
            file.write(0, ByteBuffer.wrap(new byte[100]));
            int shortest = 100;
            SplittableRandom random = new SplittableRandom(2);
            for (int i = 0; i < 50; i++) {
                shortest = Math.min(shortest, fake.afterPowerCut(random).read(path).length);
            }
            assertTrue(shortest < 100);
            file.force();
            assertEquals(100, fake.afterPowerCut(random).read(path).length);
        }
    }

    @Test
    void aWriteMadeToFailLeavesHalfBehind() throws IOException {
        try (Disk.OpenFile file = fake.create(FOLDER.resolve("a"))) {
            fake.fail((number, call) -> call == FakeDisk.Call.WRITE);
            assertThrows(IOException.class, () -> file.write(0, ByteBuffer.wrap(new byte[100])));
            assertEquals(50, file.length());
        }
    }
}
