package coldproof.report.json;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.verdict.CarriedNoise;
import coldproof.reason.verdict.Check;
import coldproof.reason.verdict.Compared;
import coldproof.reason.verdict.Comparisons;
import coldproof.reason.verdict.Randomisation;
import coldproof.reason.verdict.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** The document of {@code verdict --json}. */
public final class VerdictJson {
    private static final double MOST_WHOLE = 1L << 53; // beyond, a double is no longer every whole number

    private VerdictJson() {}

    /**
     * The verdicts of changes that were judged together. One change alone is the plain document; of several the document is that of the change
     * that decides the study, with its level below {@code against} and all of them below {@code comparisons}.
     */
    public static JsonObject of(List<Compared> compared, List<String> deviations) {
        Compared deciding = Comparisons.deciding(compared);
        JsonObject json = of(deciding.verdict(), deviations);
        if (compared.size() > 1) {
            json.put("against", deciding.question().against());
            json.put("comparisons", compared.stream().map(one -> of(one.verdict(), deviations).put("against", one.question().against())
                    .put("adjustedP", one.adjustedP()).put("adjustment", one.adjustment()).put("looks", one.looks().map(LooksJson::of))).toList());
        }
        deciding.looks().ifPresent(looks -> json.put("looks", LooksJson.of(looks)));
        return json;
    }

    /** The verdict with the deviations from the frozen plan. */
    public static JsonObject of(Verdict verdict, List<String> deviations) {
        JsonObject json = new JsonObject().put("verdict", verdict.word().code()).put("decision", verdict.decision().code())
                .put("atLeastMatters", verdict.atLeastMatters().code());
        change(json, verdict);
        json.put("interval", verdict.interval().map(VerdictJson::percent));
        json.put("equivalenceInterval", verdict.equivalence().map(VerdictJson::percent));
        json.put("method", verdict.method()).put("stratum", verdict.stratum().words());
        json.put("counts", new JsonObject().put("sessions", verdict.sessions()).put("trials", verdict.trials()));
        json.put("components", new JsonObject().put("sessionCv", verdict.sessionCvPercent()).put("runCv", verdict.runCvPercent()));
        json.put("randomisation", verdict.randomisation().map(VerdictJson::randomisation));
        json.put("moreNeeded", new JsonObject().put("sessions", whole(verdict.moreNeeded().sessions())).put("trials", whole(verdict.moreNeeded().trials()))
                .put("text", verdict.moreNeeded().text().isEmpty() ? null : verdict.moreNeeded().text()));
        json.put("carriedIn", verdict.carried().map(VerdictJson::carried));
        json.put("checks", verdict.checks().stream().map(VerdictJson::check).toList());
        json.put("deviations", deviations);
        return json.put("reason", verdict.reason().isEmpty() ? null : verdict.reason());
    }

    private static void change(JsonObject json, Verdict verdict) {
        if (verdict.estimate().isEmpty()) {
            Verdict.Bare bare = verdict.bare().orElse(new Verdict.Bare(Double.NaN, Double.NaN)); // written as null
            json.put("effectPercent", LogRatio.toPercent(bare.log())).put("metricChangePercent", bare.metricChangePercent()).put("logEffect", bare.log());
            for (String key : List.of("standardErrorLog", "df", "t", "p")) {
                json.putNull(key);
            }
            return;
        }
        Verdict.Change found = verdict.estimate().get();
        json.put("effectPercent", LogRatio.toPercent(found.log())).put("metricChangePercent", found.metricChangePercent()).put("logEffect", found.log())
                .put("standardErrorLog", found.standardError()).put("df", found.degreesOfFreedom()).put("t", found.t()).put("p", found.p());
    }

    private static JsonObject percent(Interval interval) {
        Interval percent = interval.logToPercent();
        return new JsonObject().put("level", percent.level()).put("low", percent.low()).put("high", percent.high());
    }

    private static JsonObject randomisation(Randomisation test) {
        JsonObject json = new JsonObject().put("p", test.p());
        boolean whole = test.assignments() < MOST_WHOLE;
        return (whole ? json.put("assignments", Math.round(test.assignments())) : json.put("assignments", test.assignments()))
                .put("smallestP", test.smallestP()).put("exact", test.exact());
    }

    private static JsonObject carried(CarriedNoise noise) {
        return new JsonObject().put("from", noise.from()).put("cv", LogRatio.cvPercentOfLogSd(noise.logSd())).put("df", noise.degreesOfFreedom())
                .put("ownCv", noise.ownLogSd().isPresent() ? OptionalDouble.of(LogRatio.cvPercentOfLogSd(noise.ownLogSd().getAsDouble())) : OptionalDouble.empty())
                .put("ownDf", noise.ownDegreesOfFreedom()).put("differenceP", noise.differenceP());
    }

    private static JsonObject check(Check check) {
        return new JsonObject().put("name", check.name()).put("level", check.warns() ? "warn" : "ok").put("text", check.text());
    }

    private static Optional<Long> whole(OptionalInt number) {
        return number.isPresent() ? Optional.of((long) number.getAsInt()) : Optional.empty();
    }
}
