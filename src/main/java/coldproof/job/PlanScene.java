package coldproof.job;

import coldproof.plan.Budget;
import coldproof.plan.Change;
import coldproof.plan.Factor;
import coldproof.plan.Layout;
import coldproof.plan.Level;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyScene;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a plan says of air, room, fan, power and the length of a stay: taken until somebody measures. */
final class PlanScene {
    private final Plan plan;
    private final RunSheet sheet;

    PlanScene(Plan plan, RunSheet sheet) {
        this.plan = plan;
        this.sheet = sheet;
    }

    /** The scene of the coldest outing that the plan holds; of an ordinary session where it has none. */
    SafetyScene coldestOuting() {
        Optional<Position> coldest = sheet.positions().stream().filter(this::outdoors)
                .min(Comparator.comparingDouble(position -> air(position).orElse(Double.POSITIVE_INFINITY)));
        return coldest.map(this::of).orElseGet(() -> sheet.positions().isEmpty() ? SafetyScene.NOTHING : of(sheet.positions().get(0)));
    }

    /** The scene of one trial. */
    SafetyScene of(Position position) {
        SafetyScene scene = SafetyScene.NOTHING.with(Reading.OUTDOORS, outdoors(position) ? "yes" : "no");
        OptionalDouble air = air(position);
        if (air.isPresent() && believable(Reading.AIR, air.getAsDouble())) {
            scene = scene.with(Reading.AIR, air.getAsDouble());
        }
        OptionalDouble room = room();
        if (room.isPresent() && believable(Reading.ROOM, room.getAsDouble())) {
            scene = scene.with(Reading.ROOM, room.getAsDouble());
        }
        if (plan.start().powerSource().filter(Reading.POWER.words()::contains).isPresent()) {
            scene = scene.with(Reading.POWER, plan.start().powerSource().get());
        }
        if (plan.budget().soakSeconds() > 0) {
            scene = scene.with(Reading.SOAK, Math.min(Reading.SOAK.most(), plan.budget().soakSeconds()));
        }
        String fan = position.levels().getOrDefault("fan", "");
        if (Reading.FAN.words().contains(fan)) {
            scene = scene.with(Reading.FAN, fan);
        }
        OptionalDouble stay = outdoors(position) ? staySeconds(position.session()) : OptionalDouble.empty();
        return stay.isPresent() ? scene.with(Reading.STAY, Math.min(Reading.STAY.most(), stay.getAsDouble())) : scene;
    }

    private static boolean believable(Reading reading, double number) {
        return number >= reading.least() && number <= reading.most();
    }

    /** Whether a trial is run outdoors by the plan. */
    boolean outdoors(Position position) {
        return position.levels().values().stream().anyMatch(plan.budget().outdoors()::contains);
    }

    private OptionalDouble air(Position position) {
        for (Factor factor : plan.factors().stream().filter(one -> one.change() == Change.PER_SESSION).toList()) {
            Optional<Level> level = factor.levels().stream().filter(one -> one.name().equals(position.levels().get(factor.name()))).findFirst();
            if (level.isPresent() && level.get().air().isPresent()) {
                return OptionalDouble.of(level.get().air().get().degrees());
            }
        }
        return OptionalDouble.empty();
    }

    private OptionalDouble room() {
        return sheet.positions().stream().filter(position -> !outdoors(position)).map(this::air).filter(OptionalDouble::isPresent).findFirst()
                .orElse(OptionalDouble.empty());
    }

    /** Time outdoors of a session: opening it, soak included, and its trials; empty where the plan gives no times. */
    OptionalDouble staySeconds(int session) {
        Budget budget = plan.budget();
        List<Position> trials = sheet.ofSession(session);
        if (budget.trialSeconds().isEmpty() || trials.isEmpty() || plan.layout().kind() != Layout.Kind.SESSIONS) {
            return OptionalDouble.empty();
        }
        String level = trials.get(0).levels().values().stream().filter(budget.outdoors()::contains).findFirst().orElse("");
        return OptionalDouble.of(budget.openingSeconds(level) + trials.size() * budget.trialSeconds().getAsDouble());
    }
}
