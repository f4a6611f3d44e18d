package coldproof.job;

import coldproof.plan.Position;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Caution;
import coldproof.reason.safety.Cautions;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.SafetyCard;
import coldproof.reason.safety.SafetyLevel;
import coldproof.reason.safety.SafetyRule;
import coldproof.reason.safety.StudySafety;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The gate before a trial: what {@code record} and {@code log} go through before anything runs or is written.
 *
 * <p>How a face uses it: ask the person for what can be measured ({@link Taken}, the same readings as {@code coldproof caution}), then call
 * {@link #pass} with the trial about to run and {@link Phase#RUNNING}. It returns when the way is free, and has then written the readings,
 * the acknowledgements and the rules set aside into the journal. It throws {@link Refused} while a stop holds (every stop is listed with the
 * numbers that decided it), and while a care is not acknowledged by name: ask for the name and call again. Readings hold for the session in
 * which they were taken, and so do acknowledgements and rules set aside; measuring again replaces them.
 *
 * <p>As long as nobody measured anything in the session, only the plan's own figures are judged: its stops block, its cares are remarks.
 */
public final class SafetyGate {
    private SafetyGate() {}

    /**
     * What the person brings to the gate.
     *
     * @param taken readings, as written
     * @param acknowledgedBy the name with which every care that holds is acknowledged
     * @param setAside stops set aside, by rule, each with its reason
     */
    public record Pass(List<Taken> taken, Optional<String> acknowledgedBy, Map<String, String> setAside) {
        /** Nothing measured, nothing acknowledged. */
        public static final Pass NOTHING = new Pass(List.of(), Optional.empty(), Map.of());

        /** Copies. */
        public Pass {
            taken = List.copyOf(taken);
            setAside = Map.copyOf(setAside);
        }

        /** The same without the readings, which belong to the session they were taken in. */
        public Pass withoutReadings() {
            return new Pass(List.of(), acknowledgedBy, setAside);
        }
    }

    /**
     * A way that is free.
     *
     * @param card what was judged
     * @param remarks sentences for the person that hold nothing up
     */
    public record Passage(SafetyCard card, List<String> remarks) {}

    /**
     * What holds the gate shut.
     *
     * @param stops stops that are not set aside
     * @param cares cares that are not acknowledged
     */
    public record Standing(List<Caution> stops, List<Caution> cares) {
        /** Nothing. */
        public static final Standing OPEN = new Standing(List.of(), List.of());

        /** Copies. */
        public Standing {
            stops = List.copyOf(stops);
            cares = List.copyOf(cares);
        }

        /** Whether anything does. */
        public boolean shut() {
            return !stops.isEmpty() || !cares.isEmpty();
        }
    }

    /**
     * Looks at the gate without going through it; writes nothing.
     *
     * @param safety the rules in force, read once: {@link StudyRules#of(StudyView)}
     * @throws Refused if a reading cannot be true, or a rule that never is is set aside
     */
    public static Standing look(BenchStudy study, StudySafety safety, Position position, Phase phase, Pass pass, Instant now) {
        return new Judged(study, safety, position, phase, pass, now).standing;
    }

    /**
     * Looks at the gate of a session that is about to be opened. Only its stops count yet; each is noted in the journal with the readings, so
     * that it still holds for whoever comes back later, until it is measured to be over.
     *
     * @param safety the rules in force, read once: {@link StudyRules#of(StudyView)}
     * @throws Refused if a reading cannot be true, a rule that never is is set aside, or the stop could not be written
     */
    public static Standing beforeOpening(BenchStudy study, StudySafety safety, Position position, Phase phase, Pass pass, Instant now) {
        Judged judged = new Judged(study, safety, position, phase, pass, now);
        judged.journal.shown(judged.standing.stops, judged.scene.now());
        return new Standing(judged.standing.stops, List.of());
    }

    /**
     * Judges the part of the job about to begin.
     *
     * @param study open for writing
     * @param position the trial about to run
     * @param phase usually {@link Phase#RUNNING}
     * @param now the moment, for the sun and for what warmed up meanwhile
     * @throws Refused while a stop holds, a care is not acknowledged, a reading cannot be true, or a rule that never is is set aside
     */
    public static Passage pass(BenchStudy study, Position position, Phase phase, Pass pass, Instant now) {
        Judged judged = new Judged(study, StudyRules.of(study.view()), position, phase, pass, now);
        Standing standing = judged.standing;
        if (!standing.stops.isEmpty()) {
            judged.journal.shown(standing.stops, judged.scene.now());
            throw new Refused(GateWords.blocked(standing.stops));
        }
        if (!standing.cares.isEmpty() && pass.acknowledgedBy().filter(name -> !name.isBlank()).isEmpty()) {
            judged.journal.shown(standing.cares, judged.scene.now());
            throw new Refused(GateWords.unacknowledged(standing.cares));
        }
        judged.journal.write(judged.scene.now(), judged.stops, standing.cares, pass, judged.safety);
        return new Passage(judged.card, GateWords.remarks(judged.card, judged.scene.measured()));
    }

    /** The scene judged and compared with what was acknowledged and set aside. */
    private static final class Judged {
        private final StudySafety safety;
        private final GateScene scene;
        private final GateJournal journal;
        private final SafetyCard card;
        private final List<Caution> stops;
        private final Standing standing;

        Judged(BenchStudy study, StudySafety safety, Position position, Phase phase, Pass pass, Instant now) {
            this.safety = safety;
            checkNames(safety.rules(), pass);
            scene = new GateScene(study.view(), safety, position, Taken.scene(pass.taken()), now);
            journal = new GateJournal(study, position);
            card = Cautions.judge(safety.rules(), scene.scene(), Optional.of(phase), safety.device().timeConstant());
            List<Caution> cautions = new ArrayList<>(card.cautions());
            scene.afterReturn().ifPresent(cold -> cautions.addAll(
                    Cautions.judge(safety.rules(), cold, Optional.of(Phase.POWER_ON), safety.device().timeConstant()).of(SafetyLevel.STOP)));
            stops = cautions.stream().filter(caution -> caution.level() == SafetyLevel.STOP).toList();
            List<Caution> blocking = stops.stream().filter(stop -> !pass.setAside().containsKey(stop.rule().id()) && !journal.isSetAside(stop.rule())).toList();
            List<Caution> open = scene.measured()
                    ? cautions.stream().filter(caution -> caution.level() == SafetyLevel.CARE && !journal.isAcknowledged(caution.rule())).toList() : List.of();
            standing = new Standing(blocking, open);
        }
    }

    private static void checkNames(List<SafetyRule> rules, Pass pass) {
        List<Problem> problems = new ArrayList<>();
        List<String> names = rules.stream().map(SafetyRule::id).toList();
        pass.setAside().forEach((name, reason) -> {
            Optional<SafetyRule> rule = rules.stream().filter(one -> one.id().equals(name)).findFirst();
            if (rule.isEmpty()) {
                problems.add(new Problem("there is no safety rule \"" + name + "\"", Place.named("set aside"), "the name of a rule that holds",
                        NearestWord.of(name, names), "Correct the name; coldproof caution shows it."));
            } else if (!rule.get().mayBeSetAside()) {
                problems.add(Problem.of("the rule \"" + name + "\" is never set aside", Place.named("set aside"), "",
                        rule.get().text() + " Nothing was recorded."));
            } else if (reason.isBlank()) {
                problems.add(Problem.of("the rule \"" + name + "\" is set aside without a reason", Place.named("set aside"), "RULE=REASON",
                        "Say why; it stands in every verdict and report."));
            }
        });
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
    }
}
