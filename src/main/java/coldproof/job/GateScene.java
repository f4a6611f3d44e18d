package coldproof.job;

import coldproof.physics.LumpedBody;
import coldproof.physics.Sun;
import coldproof.physics.TimeConstant;
import coldproof.plan.Position;
import coldproof.quantity.Celsius;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyScene;
import coldproof.reason.safety.StudySafety;
import coldproof.study.Entry;
import coldproof.study.Observed;
import coldproof.study.Session;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/** What is known before a trial: from the study's safety file, the plan, the session's readings, and what was taken just now. */
final class GateScene {
    private static final List<Reading> MEASURED = List.of(Reading.AIR, Reading.DEVICE, Reading.CELL);
    private final StudyView view;
    private final StudySafety safety;
    private final Position position;
    private final SafetyScene now;
    private final Instant moment;
    private final PlanScene planned;
    private final SafetyScene recorded;

    GateScene(StudyView view, StudySafety safety, Position position, SafetyScene now, Instant moment) {
        this.view = view;
        this.safety = safety;
        this.position = position;
        this.now = now;
        this.moment = moment;
        this.planned = new PlanScene(view.plan(), view.sheet());
        this.recorded = current();
    }

    /** What was taken just now. */
    SafetyScene now() {
        return now;
    }

    /** Whether anybody measured the air or the device in this session; power, charge and soak alone say nothing of the weather. */
    boolean measured() {
        return !now.values().isEmpty() || MEASURED.stream().anyMatch(recorded.values()::containsKey);
    }

    /** How fast the device warms up: from the study's logs of coming in, else by its class. */
    TimeConstant timeConstant() {
        return ComingIn.of(safety, Optional.of(view.folder()), List.of()).timeConstant();
    }

    /** Everything, the newest last. */
    SafetyScene scene() {
        return withDaylight(safety, moment, safety.known().overlaidBy(planned.of(position)).overlaidBy(recorded).overlaidBy(now));
    }

    /** The scene with the time until sunset, where the place is known. */
    static SafetyScene withDaylight(StudySafety safety, Instant moment, SafetyScene scene) {
        Optional<Duration> left = safety.site().flatMap(site -> Sun.lightLeft(moment, site));
        return left.isEmpty() || scene.values().containsKey(Reading.DAYLIGHT) ? scene : scene.with(Reading.DAYLIGHT, left.get().toSeconds());
    }

    /** The readings that were written down in a session. */
    private SafetyScene written(int session) {
        return overlaid(checks(session));
    }

    /**
     * The same for the session at hand, with what was taken at the gate since the session before and held it shut: neither leaving a reading out
     * nor opening the session by a skip opens the gate.
     */
    private SafetyScene current() {
        long since = view.state().sessions().stream().filter(session -> session.number() != position.session())
                .mapToLong(session -> session.closedBy().orElse(session.openedBy()).sequence()).max().orElse(0);
        SortedMap<Long, Map<String, Observed>> all = checks(position.session());
        view.state().cautionsShown().stream().filter(shown -> shown.sequence() > since)
                .forEach(shown -> all.put(shown.sequence(), shown.event().conditions()));
        return overlaid(all);
    }

    private SortedMap<Long, Map<String, Observed>> checks(int session) {
        SortedMap<Long, Map<String, Observed>> checks = new TreeMap<>();
        view.state().startConditions().stream().filter(check -> check.event().session() == session)
                .forEach(check -> checks.put(check.sequence(), check.event().readings()));
        return checks;
    }

    private static SafetyScene overlaid(SortedMap<Long, Map<String, Observed>> readings) {
        SafetyScene scene = SafetyScene.NOTHING;
        for (Map<String, Observed> some : readings.values()) {
            for (Map.Entry<String, Observed> reading : some.entrySet()) {
                scene = onto(scene, reading.getKey(), reading.getValue());
            }
        }
        return scene;
    }

    /** Readings of other names, and those an editor made unbelievable, are left alone. */
    private static SafetyScene onto(SafetyScene scene, String name, Observed observed) {
        Optional<Reading> reading = Reading.of(name).filter(one -> !one.derived());
        if (reading.isEmpty()) {
            return scene;
        }
        if (observed.amount().isPresent()) {
            double number = observed.amount().getAsDouble();
            boolean fits = reading.get().dimension().filter(dimension -> dimension.unit().equals(observed.unit())).isPresent();
            return fits && number >= reading.get().least() && number <= reading.get().most() ? scene.with(reading.get(), number) : scene;
        }
        return reading.get().words().contains(observed.word()) ? scene.with(reading.get(), observed.word()) : scene;
    }

    /**
     * The scene of powering on a device that came in from a measured outing before this session. Its temperature is that measured now, else
     * reckoned from the time gone since with the slow end of the time constant. Empty when it did not come in from an outing.
     */
    Optional<SafetyScene> afterReturn() {
        if (planned.outdoors(position) || openNow()) {
            return Optional.empty();
        }
        Optional<Session> before = view.state().sessions().stream().filter(session -> session.number() != position.session() && session.closedBy().isPresent())
                .max(Comparator.comparingLong(session -> session.closedBy().get().sequence()));
        if (before.isEmpty()) {
            return Optional.empty();
        }
        SafetyScene out = written(before.get().number());
        OptionalDouble outside = out.number(Reading.AIR);
        SafetyScene here = scene();
        OptionalDouble room = here.number(Reading.AIR).isPresent() ? here.number(Reading.AIR) : here.number(Reading.ROOM);
        boolean wasOut = view.sheet().ofSession(before.get().number()).stream().anyMatch(planned::outdoors);
        if (!wasOut || outside.isEmpty() || room.isEmpty()) {
            return Optional.empty();
        }
        double seconds = Math.max(0, Duration.between(before.get().closedBy().get().at().toInstant(), moment).toSeconds());
        double reckoned = LumpedBody.temperature(new Celsius(outside.getAsDouble()), new Celsius(room.getAsDouble()), seconds, timeConstant().highSeconds())
                .degrees();
        SafetyScene cold = here.with(Reading.ROOM, room.getAsDouble()).with(Reading.DEVICE, here.number(Reading.DEVICE).orElse(reckoned));
        OptionalDouble humidity = here.number(Reading.ROOM_HUMIDITY).isPresent() ? here.number(Reading.ROOM_HUMIDITY) : humidity(here, out);
        return Optional.of(humidity.isPresent() ? cold.with(Reading.ROOM_HUMIDITY, humidity.getAsDouble()) : cold);
    }

    /** The humidity of this session's air, else that of the room as it was given for the outing. */
    private static OptionalDouble humidity(SafetyScene here, SafetyScene out) {
        return here.number(Reading.HUMIDITY).isPresent() ? here.number(Reading.HUMIDITY) : out.number(Reading.ROOM_HUMIDITY);
    }

    private boolean openNow() {
        return view.state().openSession().filter(open -> open.number() == position.session()).isPresent();
    }
}
