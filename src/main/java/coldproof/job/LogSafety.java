package coldproof.job;

import coldproof.plan.Position;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Cautions;
import coldproof.reason.safety.OutdoorBudget;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyCard;
import coldproof.reason.safety.SafetyScene;
import coldproof.reason.safety.StudySafety;
import coldproof.study.Observed;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The safety gate as the checklist goes through it: before a session is opened its stops are looked at with the air just read; once it is
 * open, and again before every trial, cares want a name. Not thread-safe.
 */
final class LogSafety {
    private static final String ASIDE = "aside ";

    private final BenchStudy study;
    private final Machine machine;
    private final Map<String, String> setAside = new HashMap<>();
    private Map<String, Observed> readings = new HashMap<>();
    private Optional<StudySafety> rules = Optional.empty();
    private Position position;
    private boolean opening;
    private SafetyGate.Standing standing = SafetyGate.Standing.OPEN;

    LogSafety(BenchStudy study, Machine machine) {
        this.study = study;
        this.machine = machine;
    }

    private Instant now() {
        return machine.wall().instant();
    }

    /** What limits a stay outdoors, by what is known of the session at hand. */
    Optional<OutdoorBudget.Limit> stay() {
        return OutdoorBudget.of(new GateScene(study.view(), rules(), position, SafetyScene.NOTHING, now()).scene()).binding();
    }

    /**
     * The card for coming in from a session that ends now: where it was outdoors, or its air below the dew point of the room the device comes back
     * to. A device that was measured warmer counts as having cooled to the air since.
     */
    Optional<SafetyCard> comingIn(int session, boolean outdoors) {
        List<Position> trials = study.view().sheet().ofSession(session);
        if (trials.isEmpty()) {
            return Optional.empty();
        }
        GateScene gate = new GateScene(study.view(), rules(), trials.get(trials.size() - 1), SafetyScene.NOTHING, now());
        SafetyScene scene = gate.scene();
        OptionalDouble air = scene.number(Reading.AIR);
        if (air.isPresent() && scene.number(Reading.DEVICE).isPresent()) {
            scene = scene.with(Reading.DEVICE, Math.min(air.getAsDouble(), scene.number(Reading.DEVICE).getAsDouble()));
        }
        SafetyCard card = Cautions.judge(rules().rules(), scene, Optional.empty(), gate.timeConstant());
        return Optional.of(card).filter(cold -> outdoors || cold.number(Reading.ARRIVAL_MARGIN).orElse(0) < 0);
    }

    /** Whether anything holds the gate shut. */
    boolean shut() {
        return standing.shut();
    }

    /** What does, a line each. */
    List<String> lines() {
        return GateWords.lines(standing);
    }

    /**
     * Looks at the gate of a session that is about to be opened; only its stops count yet.
     *
     * @param taken readings taken for it, which go into the journal once it is open; what is measured anew at the gate is put among them
     */
    void beforeOpening(Position first, Map<String, Observed> taken) {
        position = first;
        opening = true;
        readings = taken;
        look();
    }

    private StudySafety rules() {
        if (rules.isEmpty()) {
            rules = Optional.of(StudyRules.of(study.view()));
        }
        return rules.get();
    }

    private void look() {
        standing = opening ? SafetyGate.beforeOpening(study, rules(), position, Phase.RUNNING, pass(Optional.empty(), pending()), now())
                : SafetyGate.look(study, rules(), position, Phase.RUNNING, pass(Optional.empty(), List.of()), now());
    }

    private SafetyGate.Pass pass(Optional<String> by, List<Taken> taken) {
        return new SafetyGate.Pass(taken, by, setAside);
    }

    private List<Taken> pending() {
        List<Taken> pending = new ArrayList<>();
        readings.forEach((name, observed) -> Reading.of(name).ifPresent(reading -> pending.add(new Taken(reading, name, text(observed)))));
        return pending;
    }

    /** The session is open: what was set aside for it goes into the journal. */
    void opened() {
        opening = false;
        new GateJournal(study, position).setAside(setAside);
        setAside.clear();
    }

    /** Looks at the gate of the trial that comes next in the open session. */
    void at(Position next) {
        position = next;
        opening = false;
        look();
    }

    /**
     * Takes an answer: a reading, a rule set aside with a reason, or a name.
     *
     * @return what to tell the person
     * @throws Refused if it is none of these, or cannot be true
     */
    List<String> answer(String text) {
        if (text.toLowerCase(Locale.ROOT).startsWith(ASIDE)) {
            return aside(text.substring(ASIDE.length()).strip());
        }
        Optional<Taken> taken = reading(text);
        if (taken.isPresent()) {
            return read(taken.get());
        }
        if (text.isBlank()) {
            throw new Refused(standing.stops().isEmpty() ? GateWords.unacknowledged(standing.cares()) : GateWords.blocked(standing.stops()));
        }
        if (!standing.stops().isEmpty()) {
            throw new Refused(Problem.of("\"" + text + "\" lifts no stop", Place.named("safety"), "a reading such as precipitation none, or aside RULE REASON",
                    "Nothing was recorded. Type it again, or pause, skip or abort."));
        }
        SafetyGate.pass(study, position, Phase.RUNNING, pass(Optional.of(text), List.of()), now());
        look();
        return List.of("Acknowledged by " + text + ". Recorded.");
    }

    private List<String> aside(String ruleAndReason) {
        int space = ruleAndReason.indexOf(' ');
        String rule = space < 0 ? ruleAndReason : ruleAndReason.substring(0, space);
        if (standing.stops().stream().noneMatch(stop -> stop.rule().id().equals(rule))) {
            List<String> holding = standing.stops().stream().map(stop -> stop.rule().id()).toList();
            throw new Refused(new Problem("no stop called \"" + rule + "\" holds now", Place.named("safety"),
                    holding.isEmpty() ? "a name: only cares are open" : "one of: " + String.join(", ", holding), NearestWord.of(rule, holding),
                    "Nothing was recorded. Type it again."));
        }
        setAside.put(rule, space < 0 ? "" : ruleAndReason.substring(space + 1).strip());
        try {
            look();
        } catch (Refused wrong) {
            setAside.remove(rule);
            throw wrong;
        }
        if (!opening) {
            new GateJournal(study, position).setAside(setAside);
            setAside.clear();
        }
        return List.of(rule + " is set aside. Every verdict shows it." + (opening ? "" : " Recorded."));
    }

    private List<String> read(Taken taken) {
        SafetyScene scene = Taken.scene(List.of(taken));
        if (opening) {
            readings.putAll(GateJournal.conditions(scene.values()));
        } else {
            new GateJournal(study, position).taken(scene);
        }
        look();
        return List.of(taken.reading().word() + " " + taken.text() + (opening ? ": taken." : ". Recorded."));
    }

    /** The longest name of a reading that the line begins with. */
    private static Optional<Taken> reading(String text) {
        return Reading.taken().stream().filter(reading -> text.startsWith(reading.word() + " "))
                .max(Comparator.comparingInt(reading -> reading.word().length()))
                .map(reading -> new Taken(reading, reading.word(), text.substring(reading.word().length()).strip()));
    }

    private static String text(Observed observed) {
        return observed.amount().isPresent() ? observed.amount().getAsDouble() + " " + observed.unit() : observed.word();
    }
}
