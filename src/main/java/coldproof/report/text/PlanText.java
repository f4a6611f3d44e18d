package coldproof.report.text;

import coldproof.plan.Factor;
import coldproof.plan.Layout;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** A plan and its run sheet for people. */
public final class PlanText {
    private static final int LABEL_COLUMNS = 10;

    private PlanText() {}

    /** What was decided, a line each. */
    public static String of(Plan plan, boolean frozen, String digest, int columns) {
        StringBuilder out = new StringBuilder();
        out.append(Wrap.at(columns, Harmless.line(plan.title())));
        out.append(Harmless.line(plan.device())).append("\n\n");
        facts(plan).forEach(fact -> line(out, fact.label(), fact.text(), columns));
        line(out, "plan", (frozen ? "frozen" : "not frozen yet") + ", digest " + digest.substring(0, 12), columns);
        return out.toString();
    }

    /** What was decided, as labelled lines. */
    public static List<Fact> facts(Plan plan) {
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of("measures", plan.metric().name() + (plan.metric().unit().isEmpty() ? "" : ", " + plan.metric().unit()) + "; " + plan.metric().better().word()
                + " is better"));
        facts.add(Fact.of("compares", plan.compare().factor() + ": " + String.join(", ", plan.compare().against()) + " against " + plan.compare().baseline()));
        facts.add(Fact.of("claim", plan.claim().word() + "; a change of " + Figures.given(plan.mattersPercent()) + " matters"));
        for (Factor factor : plan.factors()) {
            facts.add(Fact.of("factor", factor.name() + " (" + factor.change().word() + "): " + levels(factor)));
        }
        plan.noise().ifPresent(noise -> facts.add(Fact.of("noise", "run to run " + Figures.given(noise.runCvPercent()) + ", session to session "
                + Figures.given(noise.sessionCvPercent()) + ", from: " + noise.from())));
        facts.add(Fact.of("errors", "false alarm " + Figures.given(100 * plan.errors().falseAlarm()) + ", missed gain " + Figures.given(100 * plan.errors().missedGain())));
        facts.add(Fact.of("layout", layout(plan.layout())));
        facts.add(Fact.of("looks", plan.looks() == 1 ? "one, at the end" : plan.looks() + ", the last at the end"));
        return facts;
    }

    private static String levels(Factor factor) {
        List<String> levels = new ArrayList<>();
        factor.levels().forEach(level -> levels.add(level.name() + (level.setting().isEmpty() ? "" : " (" + level.setting() + ")")));
        return String.join(", ", levels);
    }

    /** The arrangement in words. */
    public static String layout(Layout layout) {
        return switch (layout.kind()) {
            case PAIRED -> layout.total() + " pairs, " + layout.order().word();
            case ALTERNATING -> counts(layout.counts(), "trials") + ", " + layout.order().word();
            case SESSIONS -> counts(layout.counts(), "sessions") + ", " + layout.trialsPerCondition() + " trials of each condition in each, "
                    + layout.order().word();
        };
    }

    private static String counts(Map<String, Integer> counts, String noun) {
        if (counts.containsKey("")) {
            return counts.get("") + " " + noun;
        }
        List<String> parts = new ArrayList<>();
        counts.forEach((level, count) -> parts.add(count + " " + level));
        return String.join(" + ", parts) + " " + noun;
    }

    /** The run sheet as a table; trials that are settled carry what became of them. */
    public static String sheet(Plan plan, RunSheet sheet, Map<Integer, String> settled) {
        List<String> factors = plan.factors().stream().filter(factor -> factor.levels().size() > 1).map(Factor::name).toList();
        List<String> heads = new ArrayList<>(List.of(">trial", ">session", ">order"));
        boolean pairs = plan.layout().kind() == Layout.Kind.PAIRED;
        if (pairs) {
            heads.add(">pair");
        }
        factors.forEach(name -> heads.add(Harmless.line(name)));
        heads.add("result");
        TextTable table = new TextTable(heads.toArray(String[]::new));
        for (Position position : sheet.positions()) {
            List<String> cells = new ArrayList<>(List.of(Integer.toString(position.number()), Integer.toString(position.session()),
                    Integer.toString(position.orderInSession())));
            if (pairs) {
                cells.add(Integer.toString(position.pair()));
            }
            factors.forEach(name -> cells.add(Harmless.line(position.levels().get(name))));
            cells.add(Harmless.line(settled.getOrDefault(position.number(), "")));
            table.row(cells.toArray(String[]::new));
        }
        return table.text("");
    }

    /** How long the study takes, in a sentence; empty where the plan gives no times. */
    public static String time(OptionalDouble totalMinutes, OptionalDouble outdoorMinutes) {
        if (totalMinutes.isEmpty()) {
            return "";
        }
        String outdoors = outdoorMinutes.isPresent() && outdoorMinutes.getAsDouble() > 0 ? ", of which outdoors " + Figures.minutes(outdoorMinutes.getAsDouble()) : "";
        return "Takes " + Figures.minutes(totalMinutes.getAsDouble()) + outdoors + ".";
    }

    private static void line(StringBuilder out, String label, String text, int columns) {
        Wrap.labelled(label, LABEL_COLUMNS, Harmless.line(text), columns, out);
    }
}
