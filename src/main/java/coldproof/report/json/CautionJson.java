package coldproof.report.json;

import coldproof.physics.RewarmTime;
import coldproof.reason.safety.Caution;
import coldproof.reason.safety.OutdoorBudget;
import coldproof.reason.safety.OutdoorStay;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyCard;
import coldproof.reason.safety.SafetyLevel;
import coldproof.reason.safety.Value;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The document of {@code caution --json}. */
public final class CautionJson {
    private CautionJson() {}

    /** The card. Wind chill and time to frostbite are null where no wind was given. */
    public static JsonObject of(SafetyCard card) {
        boolean wind = card.scene().number(Reading.WIND).isPresent();
        JsonObject json = new JsonObject().put("level", word(card.level()));
        json.put("phase", card.phase().map(Phase::word));
        json.put("dewPointC", card.number(Reading.DEW_POINT)).put("frostPointC", card.number(Reading.FROST_POINT));
        json.put("indoorDewPointC", card.number(Reading.ROOM_DEW_POINT));
        json.put("windChillC", wind ? card.number(Reading.WIND_CHILL) : OptionalDouble.empty());
        json.put("frostbiteMinutes", wind ? minutes(card.number(Reading.FROSTBITE)) : OptionalDouble.empty());
        json.put("heatIndexC", card.number(Reading.HEAT_INDEX));
        json.put("rewarmMinutes", card.rewarm().map(CautionJson::wait));
        json.put("chargeMinutes", card.charge().map(CautionJson::wait));
        json.put("roomTooDamp", card.neverWarm());
        json.put("outdoors", budget(card.budget()));
        json.put("cautions", card.cautions().stream().map(CautionJson::caution).toList());
        json.put("implausible", card.doubts().stream()
                .map(doubt -> new JsonObject().put("reading", doubt.reading().word()).put("text", doubt.text())).toList());
        return json.put("notGiven", card.missing().stream().map(Reading::word).toList());
    }

    /** A planned session in the open air beside what allows it. */
    public static JsonObject stay(OutdoorStay stay) {
        return new JsonObject().put("session", stay.session()).put("condition", stay.condition()).put("minutes", stay.seconds() / 60).put("fits", stay.fits())
                .put("trialsThatFit", stay.trialsThatFit()).put("budget", budget(stay.budget()));
    }

    /** Longest stay in the open air: what binds, and every limit. */
    private static JsonObject budget(OutdoorBudget budget) {
        return new JsonObject().put("longestMinutes", budget.binding().map(limit -> limit.seconds() / 60))
                .put("limit", budget.binding().map(limit -> limit.kind().word()))
                .put("limits", budget.limits().stream().map(limit -> new JsonObject().put("limit", limit.kind().word())
                        .put("minutes", limit.seconds() / 60).put("because", limit.because())).toList());
    }

    /** {@code go}, {@code care} or {@code stop}. */
    private static String word(SafetyLevel level) {
        return level == SafetyLevel.NOTE ? "go" : level.word();
    }

    private static OptionalDouble minutes(OptionalDouble seconds) {
        return seconds.isPresent() ? OptionalDouble.of(seconds.getAsDouble() / 60) : OptionalDouble.empty();
    }

    private static JsonObject wait(RewarmTime wait) {
        return new JsonObject().put("low", wait.lowMinutes()).put("likely", wait.likelyMinutes()).put("high", wait.highMinutes());
    }

    private static JsonObject caution(Caution caution) {
        JsonObject decided = new JsonObject();
        for (Map.Entry<Reading, Value> one : caution.decided().entrySet()) {
            Optional<String> word = Optional.of(one.getValue().word()).filter(text -> !text.isEmpty());
            if (word.isPresent()) {
                decided.put(one.getKey().word(), word.get());
            } else {
                decided.put(one.getKey().word(), one.getValue().number());
            }
        }
        return new JsonObject().put("rule", caution.rule().id()).put("phase", caution.phase().word()).put("level", caution.level().word())
                .put("text", caution.rule().text()).put("source", caution.rule().source()).put("why", caution.rule().why())
                .put("decidedBy", decided).put("mayBeSetAside", caution.rule().mayBeSetAside());
    }
}
