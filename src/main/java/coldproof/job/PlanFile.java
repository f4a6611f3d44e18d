package coldproof.job;

import coldproof.files.plan.PlanReader;
import coldproof.plan.Plan;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;

/**
 * The plan of a study folder as it stands on disk.
 *
 * @param file where it is
 * @param text its characters
 * @param digest SHA-256 of its bytes, lower-case hexadecimal
 * @param plan what it says
 */
public record PlanFile(Path file, String text, String digest, Plan plan) {
    /** The name of the plan in a study folder. */
    public static final String NAME = "plan.yaml";
    private static final long LARGEST_BYTES = 4L << 20;

    /**
     * Reads the plan of a study.
     *
     * @throws Refused if there is none, it cannot be read, or it is wrong
     */
    public static PlanFile of(Path study) {
        Path file = study.resolve(NAME);
        byte[] bytes = bytes(file);
        String text = text(file, bytes);
        return new PlanFile(file, text, digest(bytes), PlanReader.read(file.toString(), text));
    }

    /** Whether the folder holds a plan. */
    public static boolean exists(Path study) {
        return Files.isRegularFile(study.resolve(NAME));
    }

    /** The text of the plan in a study folder, whatever it says; empty where there is none or it cannot be read as text. */
    static Optional<String> textIn(Path study) {
        Path file = study.resolve(NAME);
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        try {
            return Optional.of(text(file, bytes(file)));
        } catch (Refused unreadable) {
            return Optional.empty();
        }
    }

    private static byte[] bytes(Path file) {
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                throw new Refused(Problem.of("the file is larger than any plan", Place.named(file.toString()), "at most 4 MiB",
                        "Check that this is the right file."));
            }
            return Files.readAllBytes(file);
        } catch (NoSuchFileException missing) {
            throw new Refused(Problem.of("there is no plan here", Place.named(file.toString()), "a study folder with a " + NAME,
                    "Make one with: coldproof plan new, or name the folder with --study DIR."));
        } catch (IOException failed) {
            throw new Refused(Problem.of("the plan cannot be read: " + failed.getMessage(), Place.named(file.toString()), "a readable file",
                    "Check the folder and its permissions."));
        }
    }

    private static String text(Path file, byte[] bytes) {
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException broken) {
            throw new Refused(Problem.of("the plan is not UTF-8 text", Place.named(file.toString()), "UTF-8", "Save it as UTF-8."));
        }
    }

    /** SHA-256 of bytes, lower-case hexadecimal. */
    static String digest(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java has SHA-256", impossible);
        }
    }
}
