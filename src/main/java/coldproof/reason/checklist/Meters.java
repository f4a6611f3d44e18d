package coldproof.reason.checklist;

import coldproof.plan.Plan;
import coldproof.plan.RunSheet;
import coldproof.study.Numbered;
import coldproof.study.Session;
import coldproof.study.StartConditionsChecked;
import coldproof.study.StudyState;
import coldproof.study.Trial;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What runs out at the bench.
 *
 * @param outdoorsSeconds time spent outdoors so far in the whole study
 * @param outdoorsBudgetSeconds the most the plan allows
 * @param outdoorsNow whether the open session is outdoors
 * @param staySeconds time of this stay outdoors
 * @param batteryPercent charge as last read in this session
 * @param drainPercent charge a trial takes, from readings of this session
 * @param batteryFloorPercent charge at which the plan ends a trial, 0 when it does not say
 * @param trialsLeft trials of this session still to run
 */
public record Meters(double outdoorsSeconds, OptionalDouble outdoorsBudgetSeconds, boolean outdoorsNow, double staySeconds, OptionalDouble batteryPercent,
        OptionalDouble drainPercent, double batteryFloorPercent, int trialsLeft) {
    /**
     * Reads the meters.
     *
     * @param sinceLastEntrySeconds time since the last entry, counted when an outdoor session is open and not paused
     */
    public static Meters read(Plan plan, RunSheet sheet, StudyState state, double sinceLastEntrySeconds) {
        Optional<Session> open = state.openSession();
        boolean outdoorsNow = open.isPresent() && isOutdoors(plan, open.get().levels());
        double outdoors = outdoorsNow && !state.paused() ? sinceLastEntrySeconds : 0;
        double stay = outdoorsNow ? outdoors + open.get().elapsed().seconds() : 0;
        for (Session session : state.sessions()) {
            outdoors += isOutdoors(plan, session.levels()) ? session.elapsed().seconds() : 0;
        }
        List<Double> charge = open.map(session -> charge(state, session)).orElse(List.of());
        int left = open.map(session -> left(sheet, state, session.number())).orElse(0);
        return new Meters(outdoors, plan.budget().outdoorsAtMostSeconds(), outdoorsNow, stay,
                charge.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(charge.get(charge.size() - 1)), drain(charge),
                plan.abort().batteryBelowPercent().orElse(0), left);
    }

    /** Whether a session at these levels is outdoors. */
    public static boolean isOutdoors(Plan plan, Map<String, String> levels) {
        return levels.values().stream().anyMatch(plan.budget().outdoors()::contains);
    }

    private static List<Double> charge(StudyState state, Session session) {
        List<Double> charge = new ArrayList<>();
        for (Numbered<StartConditionsChecked> check : state.startConditions()) {
            boolean here = check.sequence() > session.lastOpenedBy().sequence() && check.event().session() == session.number();
            double percent = StartReadings.amount(check.event().readings(), StartReadings.BATTERY);
            if (here && percent >= 0) {
                charge.add(percent);
            }
        }
        return charge;
    }

    private static OptionalDouble drain(List<Double> charge) {
        if (charge.size() < 2 || charge.get(charge.size() - 1) >= charge.get(0)) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of((charge.get(0) - charge.get(charge.size() - 1)) / (charge.size() - 1));
    }

    private static int left(RunSheet sheet, StudyState state, int session) {
        long settled = state.trials().stream().map(Trial::recorded).filter(trial -> trial.session() == session).count()
                + sheet.ofSession(session).stream().filter(position -> state.skipped().containsKey(position.number())).count();
        return Math.max(0, sheet.ofSession(session).size() - (int) settled);
    }

    /** Charge expected at the end of the session; empty while its drain is not known. */
    public OptionalDouble batteryAtEnd() {
        if (batteryPercent.isEmpty() || drainPercent.isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(batteryPercent.getAsDouble() - trialsLeft * drainPercent.getAsDouble());
    }

    /** Whether the battery will not last to the end of the session. */
    public boolean batteryTooSmall() {
        return batteryAtEnd().isPresent() && batteryAtEnd().getAsDouble() < batteryFloorPercent;
    }

    /** Whether the time outdoors is used up. */
    public boolean outdoorsOver() {
        return outdoorsBudgetSeconds.isPresent() && outdoorsSeconds > outdoorsBudgetSeconds.getAsDouble();
    }
}
