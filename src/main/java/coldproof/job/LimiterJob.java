package coldproof.job;

import coldproof.plan.Better;
import coldproof.plan.Factor;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.limiter.KnownLimits;
import coldproof.reason.limiter.LimiterAnswer;
import coldproof.reason.limiter.LimiterTrial;
import coldproof.reason.limiter.Limiters;
import coldproof.reason.limiter.StartMatch;
import coldproof.study.Trial;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntConsumer;

/** Names what limits a device, from a study or a table of trials with traces. */
public final class LimiterJob {
    private LimiterJob() {}

    /**
     * Explains a table of trials.
     *
     * @param tracesRead told after each trace how many were read
     * @throws Refused if the table, a column, a cell or a trace is wrong; all wrong traces are reported
     */
    public static LimiterAnswer ofTable(LimiterQuestion question, IntConsumer tracesRead) {
        return Limiters.explain(trials(LimiterTable.entries(question), question.mappings(), tracesRead), question.limits());
    }

    /**
     * Explains a study: its trials that have a trace.
     *
     * @param mappings which column of the logs is which channel; remembered in the study once the logs were read by them. None: as remembered
     * @param limits limits the maker states
     * @param tracesRead told after each trace how many were read
     * @throws Refused if no trial has a trace, or a trace is wrong
     */
    public static LimiterAnswer ofStudy(StudyView study, List<String> mappings, KnownLimits limits, IntConsumer tracesRead) {
        List<LimiterTable.Entry> entries = entries(study);
        if (entries.isEmpty()) {
            throw new Refused(Problem.of("no trial of this study has a trace", Place.named(study.folder().toString()), "telemetry of the trials",
                    "Record it with `coldproof record`, or name logs in a table: coldproof limiter --trials FILE.csv --trace-column trace --factor fan"));
        }
        List<LimiterTrial> trials = trials(entries, mappings.isEmpty() ? RememberedColumns.remembered(study.folder()) : mappings, tracesRead);
        if (!mappings.isEmpty()) {
            RememberedColumns.remember(study.folder(), mappings);
        }
        return explained(study, trials, limits);
    }

    /** The answer for trials of a study, with a remark on whether they began as its plan asks. */
    static LimiterAnswer explained(StudyView study, List<LimiterTrial> trials, KnownLimits limits) {
        LimiterAnswer answer = Limiters.explain(trials, limits);
        OptionalDouble within = study.plan().start().dieWithinKelvins();
        return within.isPresent() ? answer.with(StartMatch.remark(trials, within.getAsDouble())) : answer;
    }

    /** The trials of a study that have a trace, in the order run. */
    static List<LimiterTable.Entry> entries(StudyView study) {
        List<LimiterTable.Entry> entries = new ArrayList<>();
        for (Trial trial : study.scored()) {
            trial.recorded().trace().ifPresent(trace -> entries.add(entry(study, trial, trace)));
        }
        return entries;
    }

    private static LimiterTable.Entry entry(StudyView study, Trial trial, String trace) {
        Map<String, String> levels = new LinkedHashMap<>();
        study.plan().factors().stream().map(Factor::name).forEach(name -> levels.put(name, trial.recorded().levels().getOrDefault(name, "")));
        boolean higher = study.plan().metric().better() == Better.HIGHER;
        double log = trial.score() > 0 ? Math.log(trial.score()) : Double.NaN;
        double[] loops = trial.recorded().loops().stream().mapToDouble(Double::doubleValue).toArray();
        LimiterTrial.Loops inside = loops.length == 0 ? LimiterTrial.Loops.NONE : higher ? LimiterTrial.Loops.ofRates(loops) : LimiterTrial.Loops.ofTimes(loops);
        return new LimiterTable.Entry(study.folder().resolve(trace), levels, Integer.toString(trial.recorded().session()), trial.recorded().position(),
                higher ? log : -log, inside);
    }

    static List<LimiterTrial> trials(List<LimiterTable.Entry> entries, List<String> mappings, IntConsumer tracesRead) {
        TraceReading reading = TraceReading.of(entries, mappings, tracesRead);
        if (!reading.problems().isEmpty()) {
            throw new Refused(reading.problems());
        }
        return reading.trials().stream().map(Optional::orElseThrow).toList();
    }
}
