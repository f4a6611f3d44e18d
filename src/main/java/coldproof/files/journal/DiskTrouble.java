package coldproof.files.journal;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;

/** Words an I/O failure for the person: what failed, why as far as the system says, what was kept, what to do. */
public final class DiskTrouble {
    /** Less free space than this counts as full: the smallest unit most file systems hand out, and one for the folder. */
    private static final long FULL_BELOW_BYTES = 8192;

    private DiskTrouble() {}

    /**
     * A refusal that keeps the failure as its cause.
     *
     * @param what what failed, to follow the file's name, such as {@code could not be written}
     * @param kept what this means for the data, such as {@code the entry is not recorded}
     */
    public static Refused refused(Disk disk, String what, Path path, String kept, IOException cause) {
        Refused refused = new Refused(problem(disk, what, path, kept, cause));
        refused.initCause(cause);
        return refused;
    }

    private static Problem problem(Disk disk, String what, Path path, String kept, IOException cause) {
        String name = path.getFileName() == null ? path.toString() : path.getFileName().toString();
        String message = cause.getMessage() == null ? "" : cause.getMessage();
        String lower = message.toLowerCase(Locale.ROOT);
        Path folder = path.toAbsolutePath().getParent();
        String why;
        String remedy;
        if (cause instanceof FileAlreadyExistsException) {
            why = "a file of this name is there already";
            remedy = "give another name";
        } else if (!folderIsThere(disk, folder)) {
            why = "its folder is no longer there: was the medium removed, or the folder moved?";
            remedy = "put the medium back and try again, or write elsewhere (--elsewhere FILE)";
        } else if (cause instanceof NoSuchFileException) {
            why = "there is no such file";
            remedy = "check the name and the folder";
        } else if (cause instanceof AccessDeniedException || lower.contains("read-only") || lower.contains("permission denied")) {
            why = "the file or its folder may not be written or read by you, or the medium is read-only";
            remedy = "give yourself the right to write there, or write elsewhere (--elsewhere FILE)";
        } else if (isFull(disk, folder, lower)) {
            why = "the disk is full";
            remedy = "make room and try again, or write elsewhere (--elsewhere FILE)";
        } else {
            why = message.isBlank() ? "the system gives no reason" : "the system says: " + reason(cause);
            remedy = "try again, or write elsewhere (--elsewhere FILE)";
        }
        return Problem.of(name + " " + what + ": " + why, Place.named(path.toString()), "", sentence(kept) + " " + sentence(remedy));
    }

    /** Why something could not be read or written, in a few words; {@link #refused} says more where the file was there before. */
    public static String reason(IOException failed) {
        if (failed instanceof AccessDeniedException) {
            return "permission denied";
        }
        if (failed instanceof NoSuchFileException) {
            return "there is no such folder, and none can be made there";
        }
        if (failed instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        return failed.getMessage() == null ? failed.getClass().getSimpleName() : failed.getMessage();
    }

    private static String sentence(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
    }

    private static boolean folderIsThere(Disk disk, Path folder) {
        try {
            return folder == null || disk.exists(folder);
        } catch (IOException e) {
            return false; // the cause at hand is shown; that the folder cannot be asked for either says the medium is gone
        }
    }

    private static boolean isFull(Disk disk, Path folder, String lowerMessage) {
        if (lowerMessage.contains("no space left") || lowerMessage.contains("not enough space") || lowerMessage.contains("quota")) {
            return true;
        }
        try {
            return folder != null && disk.usableBytes(folder) < FULL_BELOW_BYTES;
        } catch (IOException e) {
            return false; // not known; the cause at hand is shown in its own words
        }
    }
}
