package coldproof.face.cli;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Changes texts as chance and malice would. */
final class Mutation {
    private static final String[] TOKENS = {
        "1e308", "-1", "0", "999999999999", "2147483647", "2147483648", "1e-300", "NaN", "null", "{", "}", "[[[[", "\"", "'", ": ", "- ", "\n", "\t", "#", "&a ",
        "*a", "!!binary ", "%", "°C", "\u0000", "\u001b[2J\u001b]0;x\u0007", "\u202e", "\u0085", "\ud800", "🧊", "٣", "0x10", "1,5", "1.5.5", "=cmd()",
        "9".repeat(400), "a".repeat(3000), "{a: ".repeat(60), "\\u0000", "\\ud800", "../../x", "per session", "per trial", "room", "sessions", "trials", "-273.16 °C",
        "1000000 h", "100 %", "0.0000001 %", "100000", "looks", "-- ", "? ", "| ", "<<: ", "\r\n", "\ufeff",
    };
    private static final Pattern NUMBER = Pattern.compile("-?\\d+([.,]\\d+)?");
    private final SplittableRandom random;

    Mutation(SplittableRandom random) {
        this.random = random;
    }

    /** One to four changes. */
    String of(String text) {
        String changed = text;
        int changes = 1 + random.nextInt(4);
        for (int i = 0; i < changes; i++) {
            changed = once(changed);
        }
        return changed;
    }

    private String once(String text) {
        if (text.isEmpty()) {
            return token();
        }
        int at = random.nextInt(text.length());
        int end = Math.min(text.length(), at + 1 + random.nextInt(30));
        return switch (random.nextInt(8)) {
            case 0 -> text.substring(0, at) + (char) random.nextInt(0x250) + text.substring(at + 1);
            case 1 -> text.substring(0, at) + text.substring(end);
            case 2 -> text.substring(0, end) + text.substring(at);
            case 3, 4 -> text.substring(0, at) + token() + text.substring(random.nextBoolean() ? at : end);
            case 5 -> lines(text);
            case 6 -> text.substring(0, at);
            default -> number(text);
        };
    }

    private String token() {
        return TOKENS[random.nextInt(TOKENS.length)];
    }

    private String lines(String text) {
        List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
        int one = random.nextInt(lines.size());
        int other = random.nextInt(lines.size());
        if (random.nextBoolean()) {
            Collections.swap(lines, one, other);
        } else {
            lines.add(one, lines.get(other));
        }
        return String.join("\n", lines);
    }

    private String number(String text) {
        List<int[]> places = new ArrayList<>();
        Matcher matcher = NUMBER.matcher(text);
        while (matcher.find()) {
            places.add(new int[] {matcher.start(), matcher.end()});
        }
        if (places.isEmpty()) {
            return text + token();
        }
        int[] place = places.get(random.nextInt(places.size()));
        return text.substring(0, place[0]) + token() + text.substring(place[1]);
    }

    /**
     * A journal some of whose lines are changed in their content but have the right checksums, as if somebody had meant it. Written after the
     * page that describes the format, not with the program's own writer.
     */
    String forged(String journal) {
        StringBuilder out = new StringBuilder();
        for (String line : journal.split("\n")) {
            int end = line.indexOf(",\"prev\":\"");
            out.append(random.nextInt(6) == 0 ? of(line.substring(0, end)).replace("\n", " ") : line.substring(0, end)).append(line.substring(end)).append('\n');
        }
        return relinked(out.toString());
    }

    /** The same lines with the checksums that their content asks for. */
    String relinked(String journal) {
        StringBuilder out = new StringBuilder();
        String previous = "0".repeat(16);
        for (String line : journal.split("\n")) {
            String covered = line.substring(0, line.lastIndexOf(",\"prev\":\"")) + ",\"prev\":\"" + previous + "\"";
            previous = sum(covered);
            out.append(covered).append(",\"sum\":\"").append(previous).append("\"}\n");
        }
        return out.toString();
    }

    private static String sum(String covered) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(covered.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest, 0, 8);
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError(e);
        }
    }
}
