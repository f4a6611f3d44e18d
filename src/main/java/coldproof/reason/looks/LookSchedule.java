package coldproof.reason.looks;

import coldproof.plan.Layout;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import coldproof.reason.looks.Amount.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * Where the looks of a plan lie in its run sheet: equally spaced in sessions, pairs or trials, at the end of one, moved later where the trials so far
 * could not carry a verdict however they came out, and left out where that reaches the next. The last look is at the end. A verdict between two
 * looks is that of the look before it: judging again and again costs nothing.
 */
public final class LookSchedule {
    private final Plan plan;
    private final Amount amount;
    private final List<Unit> all;
    private final List<LookPoint> points;

    private LookSchedule(Plan plan, RunSheet sheet) {
        this.plan = plan;
        this.amount = new Amount(plan);
        this.all = sheet.positions().stream().map(position -> unit(position.levels().get(plan.compare().factor()), position)).toList();
        this.points = points(sheet);
    }

    /** The looks of a plan. */
    public static LookSchedule of(Plan plan, RunSheet sheet) {
        return new LookSchedule(plan, sheet);
    }

    private static Unit unit(String level, Position position) {
        return new Unit(level, position.session(), position.pair());
    }

    /** The looks, in order; one at least. */
    public List<LookPoint> points() {
        return points;
    }

    /** Whether there are looks before the end. */
    public boolean looksEarly() {
        return points.size() > 1;
    }

    /** What is counted between looks: sessions, pairs or trials. */
    public String unitWord() {
        return plan.layout().kind() == Layout.Kind.SESSIONS ? "session" : amount.countsPairs() ? "pair" : "trial";
    }

    /**
     * The last look that is due.
     *
     * @param settled whether the trial at a position of the run sheet was run or skipped
     */
    public Optional<LookPoint> reached(IntPredicate settled) {
        LookPoint reached = null;
        int position = 1;
        for (LookPoint point : points) {
            while (position <= point.lastPosition() && settled.test(position)) {
                position++;
            }
            if (position > point.lastPosition()) {
                reached = point;
            }
        }
        return Optional.ofNullable(reached);
    }

    /**
     * Share of the planned information in trials that were really run.
     *
     * @param levels the level of each trial, in order
     * @param positions the place of each on the run sheet
     * @return 0 or more; not above 1 where no trial was added
     */
    public double observedFraction(List<String> levels, List<Integer> positions) {
        List<Unit> run = new ArrayList<>();
        for (int i = 0; i < levels.size(); i++) {
            int position = positions.get(i);
            if (position >= 1 && position <= all.size()) {
                Unit planned = all.get(position - 1);
                run.add(new Unit(levels.get(i), planned.session(), planned.pair()));
            }
        }
        return amount.information(run) / amount.information(all);
    }

    private List<LookPoint> points(RunSheet sheet) {
        List<Integer> ends = ends(sheet);
        List<LookPoint> found = new ArrayList<>();
        int from = 0;
        for (int look = 1; look < plan.looks(); look++) {
            int end = Math.max(from, (int) Math.ceil((double) look * ends.size() / plan.looks()) - 1);
            while (end < ends.size() - 1 && !amount.carriesVerdict(all.subList(0, ends.get(end)))) {
                end++;
            }
            if (end < ends.size() - 1 && fraction(ends.get(end)) < 1) {
                found.add(point(found.size() + 1, ends.get(end), end + 1));
                from = end + 1;
            }
        }
        found.add(point(found.size() + 1, all.size(), ends.size()));
        return List.copyOf(found);
    }

    private double fraction(int lastPosition) {
        return amount.information(all.subList(0, lastPosition)) / amount.information(all);
    }

    private LookPoint point(int number, int lastPosition, int units) {
        double fraction = lastPosition == all.size() ? 1 : fraction(lastPosition);
        return new LookPoint(number, lastPosition, units, fraction, amount.degreesOfFreedom(all.subList(0, lastPosition)));
    }

    /** Last positions of sessions, pairs or trials. */
    private List<Integer> ends(RunSheet sheet) {
        boolean sessions = plan.layout().kind() == Layout.Kind.SESSIONS;
        List<Integer> ends = new ArrayList<>();
        List<Position> positions = sheet.positions();
        for (int i = 0; i < positions.size(); i++) {
            Position here = positions.get(i);
            boolean last = i == positions.size() - 1;
            boolean closes = last || (sessions ? positions.get(i + 1).session() != here.session() : positions.get(i + 1).pair() != here.pair() || here.pair() == 0);
            if (closes) {
                ends.add(i + 1);
            }
        }
        return ends;
    }

}
