package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.json.JsonFactory;

class CautionVerbTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String words) {
        String[] arguments = ("caution " + words).strip().split(" ");
        return new CommandLineFace(new Streams(new BufferedReader(new StringReader("")), new PrintWriter(out), new PrintWriter(err), false, 80, false))
                .run(arguments);
    }

    private Map<String, Object> json(String words) {
        assertEquals(0, run("--json " + words), err::toString);
        try (JsonParser parser = new JsonFactory().createParser(ObjectReadContext.empty(), out.toString())) {
            parser.nextToken();
            return Json.object(parser);
        }
    }

    private static List<?> list(Map<String, Object> json, String key) {
        return (List<?>) json.get(key);
    }

    private static boolean has(Map<String, Object> json, String rule, String level) {
        return list(json, "cautions").stream().map(caution -> (Map<?, ?>) caution)
                .anyMatch(caution -> rule.equals(caution.get("rule")) && level.equals(caution.get("level")));
    }

    @Test
    void anOrdinaryRoomIsGo() {
        assertEquals("go", json("--air 21C --humidity 45%").get("level"));
    }

    @Test
    void aWinterOutingNamesItsNumbers() {
        Map<String, Object> json = json("--air -9C --humidity 70% --wind 3m/s --indoors 21C --indoor-humidity 45%");
        assertEquals("care", json.get("level"));
        // WMO pair by hand: e = 0.7 * 611.2 exp(17.62 * -9 / 234.12) = 217.4 Pa; dew -13.48, frost -12.00; room dew point 8.61 °C
        assertEquals(-13.48, (double) json.get("dewPointC"), 0.01);
        assertEquals(-12.00, (double) json.get("frostPointC"), 0.01);
        assertEquals(8.61, (double) json.get("indoorDewPointC"), 0.01);
        // 13.12 + 0.6215 T - 11.37 V^0.16 + 0.3965 T V^0.16 at -9 °C and 10.8 km/h
        assertEquals(-14.3, (double) json.get("windChillC"), 0.05);
        assertEquals(null, json.get("frostbiteMinutes"));
        Map<?, ?> wait = (Map<?, ?>) json.get("rewarmMinutes");
        assertTrue((double) wait.get("low") <= (double) wait.get("likely") && (double) wait.get("likely") <= (double) wait.get("high"));
        assertTrue((double) wait.get("likely") >= 60, "an unmeasured device waits an hour at least");
    }

    @Test
    void aWindThatIsNotGivenIsNamedAsNotLookedAt() {
        assertTrue(list(json("--air -9C --humidity 70%"), "notGiven").contains("wind"));
    }

    @Test
    void aWindThatIsGivenIsNot() {
        Map<String, Object> json = json("--air -9C --wind 0m/s");
        assertFalse(list(json, "notGiven").contains("wind"));
        assertEquals(-9.0, json.get("windChillC"));
    }

    @Test
    void aFieldCardIsOnePage() {
        assertEquals(0, run("--card --air -9C --humidity 70% --wind 3m/s --indoors 21C --indoor-humidity 45%"));
        assertTrue(out.toString().lines().count() <= 66 && out.toString().startsWith("FIELD CARD"), out::toString);
    }

    @Test
    void theSunEndsTheDay() {
        Map<String, Object> json = json("--air -3C --place 47.6,12.3 --at 2026-12-21T15:10Z");
        assertTrue(has(json, "little-daylight", "care")); // sunset there on that day at 15:18 UTC, give or take two minutes
        assertEquals("daylight", ((Map<?, ?>) json.get("outdoors")).get("limit"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--place 91,0", "--place 47.6", "--place north,east", "--at noon", "--phase running,in", "--device-class toaster", "--coming-in /no/such/log.csv"})
    void whatMakesNoSenseBesideReadingsIsRefused(String words) {
        assertEquals(2, run("--air -9C " + words));
        assertFalse(err.toString().contains("Exception"), err::toString);
    }

    @Test
    void chargingAFrozenCellIsAStop() {
        Map<String, Object> json = json("--air -9C --humidity 70% --device-temperature -0,1C --charging");
        assertEquals("stop", json.get("level"));
        assertTrue(has(json, "charge-frozen-cell", "stop"));
    }

    @Test
    void withoutADeviceTemperatureTheDeviceIsAsColdAsTheTestAirAtPowerOn() {
        assertTrue(has(json("--air -9C --humidity 70% --indoors 21C --indoor-humidity 45% --phase power-on"), "power-on-condensing", "stop"));
    }

    @Test
    void onlyThePhaseAskedIsJudged() {
        Map<String, Object> json = json("--air -9C --humidity 70% --indoors 21C --indoor-humidity 45% --device-temperature 20C --phase power-on");
        assertEquals("go", json.get("level"));
        assertTrue(list(json, "cautions").stream().allMatch(caution -> "power-on".equals(((Map<?, ?>) caution).get("phase"))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--air -9C --humidity 0%", "--air -9C --humidity 130%", "--air -90C", "--air NaN", "--air 70C", "--air 61C", "--air -9C --wind 120m/s",
        "--air -9C --wind -1m/s", "--air -9C --battery 101%", "--humidity 70%", "", "--air -9C --power mains", "--air -300C"})
    void nonsenseIsRefusedWithAReason(String words) {
        assertEquals(2, run(words));
        assertTrue(out.toString().isEmpty());
        assertFalse(err.toString().contains("Exception"), err::toString);
        assertTrue(err.toString().contains("Expected"), err::toString);
    }

    @Test
    void fahrenheitGivenAsCelsiusIsToldSo() {
        assertEquals(2, run("--air 70C"));
        assertTrue(err.toString().contains("70 °F, which is 21.1 °C"), err::toString);
    }

    @ParameterizedTest
    @ValueSource(strings = {"--air 50C --humidity 90%", "--air 25C --humidity 50% --precipitation snow", "--air -20C --precipitation rain",
        "--air 5C --humidity 40% --precipitation fog", "--air -5C --wind 40m/s", "--air 0C --indoors 45C", "--air 55C --humidity 5%"})
    void whatIsHardToBelieveIsFlagged(String words) {
        Map<String, Object> json = json(words);
        assertFalse(list(json, "implausible").isEmpty());
        assertFalse("go".equals(json.get("level")));
    }

    /** JSON as plain maps and lists. */
    private static final class Json {
        static Map<String, Object> object(JsonParser parser) {
            Map<String, Object> members = new LinkedHashMap<>();
            while (parser.nextToken() != JsonToken.END_OBJECT) {
                String key = parser.currentName();
                parser.nextToken();
                members.put(key, value(parser));
            }
            return members;
        }

        private static Object value(JsonParser parser) {
            return switch (parser.currentToken()) {
                case START_OBJECT -> object(parser);
                case START_ARRAY -> {
                    List<Object> items = new ArrayList<>();
                    while (parser.nextToken() != JsonToken.END_ARRAY) {
                        items.add(value(parser));
                    }
                    yield items;
                }
                case VALUE_NUMBER_FLOAT, VALUE_NUMBER_INT -> parser.getDoubleValue();
                case VALUE_TRUE, VALUE_FALSE -> parser.getBooleanValue();
                case VALUE_NULL -> null;
                default -> parser.getString();
            };
        }
    }
}
