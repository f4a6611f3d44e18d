package coldproof.files.folder;

import coldproof.files.journal.Disk;
import coldproof.files.journal.DiskTrouble;
import coldproof.files.journal.SystemDisk;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.study.MergedEntries;
import coldproof.study.TrialRecorded;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Telemetry that trials of the merged journal name and that lies with the other copy only. */
final class TraceCopies {
    private final Disk disk = new SystemDisk();
    private final Path here;
    private final Path there;
    private final Set<String> names = new LinkedHashSet<>();
    private final List<String> copied = new ArrayList<>();
    private final List<String> missing = new ArrayList<>();

    TraceCopies(Path here, Path there, MergedEntries merged) {
        this.here = here;
        this.there = there;
        merged.entries().forEach(entry -> {
            if (entry.event() instanceof TrialRecorded trial) {
                trial.trace().ifPresent(names::add);
            }
        });
    }

    /** Refuses before the first file is copied if one of the same name differs. */
    void copy() {
        List<Problem> differing = new ArrayList<>();
        List<String> wanted = new ArrayList<>();
        for (String name : names) {
            try {
                compare(name, wanted, differing);
            } catch (IOException e) {
                throw DiskTrouble.refused(disk, "could not be compared with its copy", here.resolve(name), "nothing was changed", e);
            }
        }
        if (!differing.isEmpty()) {
            throw new Refused(differing);
        }
        wanted.forEach(this::copy);
    }

    private void compare(String name, List<String> wanted, List<Problem> differing) throws IOException {
        boolean isHere = disk.exists(here.resolve(name));
        boolean isThere = disk.exists(there.resolve(name));
        if (isHere && isThere && !Arrays.equals(disk.read(here.resolve(name)), disk.read(there.resolve(name)))) {
            differing.add(Problem.of("the two copies have different files of this name", Place.named(here.resolve(name).toString()),
                    "the same bytes in both; nothing was changed", "Find out which belongs to the trial, and rename nothing by hand before."));
        } else if (isThere && !isHere) {
            wanted.add(name);
        } else if (!isHere) {
            missing.add(name);
        }
    }

    private void copy(String name) {
        try {
            Path to = here.resolve(name);
            byte[] content = disk.read(there.resolve(name));
            disk.createFolder(to.toAbsolutePath().getParent());
            try (Disk.OpenFile file = disk.create(to)) {
                file.write(0, ByteBuffer.wrap(content));
                file.force();
            }
            copied.add(name);
        } catch (IOException e) {
            throw DiskTrouble.refused(disk, "could not be copied", here.resolve(name), "the journal was not merged", e);
        }
    }

    /** Names of the files copied. */
    List<String> copied() {
        return copied;
    }

    /** Names of the files that neither copy has. */
    List<String> missing() {
        return missing;
    }
}
