package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Sizes from options alone. The powers are from R 4.2.2: {@code power.t.test(n, delta = log(1.03), sd = sqrt(log(1 + 0.015^2)), strict = TRUE)},
 * for pairs with {@code sd * sqrt(2)} and {@code type = "paired"}, and for sessions {@code pt} with the noncentrality
 * {@code log(1.03) / sqrt(2 * (sd_session^2 + sd^2 / 4) / k)} and {@code 2 k - 2} degrees of freedom.
 */
class RunsVerbTest {
    private static JsonNode runs(String... options) {
        String[] words = new String[options.length + 2];
        words[0] = "runs";
        words[1] = "--json";
        System.arraycopy(options, 0, words, 2, options.length);
        Call call = Call.of(words);
        assertEquals(ExitStatus.DONE, call.status(), call.err());
        return new JsonMapper().readTree(call.out());
    }

    @ParameterizedTest
    @CsvSource({
        "alternating, 7, 14, 12, 0.922059042532, 0.866945554793",
        "paired,      8, 16,  7, 0.919766379773, 0.864327645890",
        "sessions,    5, 40,  8, 0.960123787920, 0.885096418654",
    })
    void findTheSmallestSizeThatReachesThePower(String layout, int perLevel, int trials, double df, double power, double oneFewer) {
        JsonNode json = runs("--layout", layout, "--effect", "3%", "--noise", "1,5 %", "--power", "90%", "--session-noise", "0.8%", "--trials-per-session", "4");
        assertEquals(perLevel, json.get("perLevel").get(0).asInt());
        assertEquals(trials, json.get("trialsTotal").asInt());
        assertEquals(df, json.get("df").asDouble());
        assertEquals(power, json.get("power").asDouble(), 1e-11);
        assertEquals(oneFewer, json.get("powerOneFewer").asDouble(), 1e-11);
    }

    @Test
    void threeAndThreeSessionsAreToldThatTheirOrderAloneCannotReachFivePercent() {
        JsonNode json = runs("--layout", "sessions", "--per-level", "3", "--effect", "3%", "--noise", "1.5%", "--session-noise", "0.8%");
        assertEquals(0.1, json.get("smallestRandomisationP").asDouble(), 1e-15, "2 of the 20 ways to choose 3 of 6");
        assertTrue(json.get("warnings").toString().contains("cannot reach 5 %"), json.toString());
    }

    @ParameterizedTest
    @CsvSource({
        "--noise, 3 kg", "--noise, abc", "--power, 100%", "--false-alarm, 60%", "--layout, sesions", "--tail, three", "--per-level, 2.5", "--ratio, 0",
        "--effect, -100%",
    })
    void aWrongValueIsRefusedInWordsThatNameTheOption(String option, String value) {
        Call call = option.equals("--noise") ? Call.of("runs", "--noise", value) : Call.of("runs", "--noise", "1%", option, value);
        assertEquals(ExitStatus.WRONG_INPUT, call.status());
        assertTrue(call.err().contains(option), call.err());
        assertEquals("", call.out());
    }
}
