package coldproof.files.journal;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;

class SystemDiskTest extends DiskContract {
    @TempDir
    private Path folder;

    @Override
    Disk disk() {
        return new SystemDisk();
    }

    @Override
    Path folder() {
        return folder;
    }
}
