package coldproof.files.folder;

import coldproof.files.journal.Disk;
import coldproof.files.journal.DiskTrouble;
import coldproof.files.journal.SystemDisk;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Writes a text as a file that was not there before; nothing is ever overwritten. */
public final class NewFile {
    private NewFile() {}

    /**
     * Writes a file and its folder, if that is not there.
     *
     * @throws coldproof.quantity.Refused if a file of this name is there already, or it cannot be written
     */
    public static void write(Path file, String text) {
        Disk disk = new SystemDisk();
        try {
            disk.createFolder(file.toAbsolutePath().getParent());
            try (Disk.OpenFile made = disk.create(file)) {
                made.write(0, ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8)));
                made.force();
            }
        } catch (IOException e) {
            throw DiskTrouble.refused(disk, "could not be written", file, "it is not written", e);
        }
    }
}
