package coldproof.files.plan;

import coldproof.plan.Change;
import coldproof.plan.Factor;
import coldproof.plan.Layout.Kind;
import coldproof.plan.Level;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Writes a plan as a person would: short lines, units, only what was decided. What is written reads back as the same plan. */
public final class PlanWriter {
    private final StringBuilder out = new StringBuilder();

    private PlanWriter() {}

    /** The plan as YAML. */
    public static String write(Plan plan) {
        PlanWriter writer = new PlanWriter();
        writer.question(plan);
        writer.factors(plan);
        writer.numbers(plan);
        writer.limits(plan);
        writer.workload(plan);
        writer.line("seed", Long.toString(plan.seed()));
        return writer.out.toString();
    }

    private void question(Plan plan) {
        line("coldproof", "1");
        line("title", text(plan.title()));
        line("device", text(plan.device()));
        line("metric", "{name: " + text(plan.metric().name()) + ", unit: " + text(plan.metric().unit()) + ", better: " + plan.metric().better().word() + "}");
        List<String> against = plan.compare().against();
        line("compare", "{factor: " + text(plan.compare().factor()) + ", baseline: " + text(plan.compare().baseline()) + ", against: "
                + (against.size() == 1 ? text(against.get(0)) : list(against)) + "}");
        line("matters", percent(plan.mattersPercent()));
        line("claim", plan.claim().word());
    }

    private void factors(Plan plan) {
        out.append("factors:\n");
        for (Factor factor : plan.factors()) {
            boolean settings = factor.levels().stream().anyMatch(level -> !level.setting().isEmpty());
            String levels = settings
                    ? factor.levels().stream().map(PlanWriter::level).collect(Collectors.joining(", ", "{", "}"))
                    : list(factor.levelNames());
            out.append("  ").append(text(factor.name())).append(": {change: ").append(factor.change() == Change.PER_SESSION ? "per session" : "per trial")
                    .append(", levels: ").append(levels).append("}\n");
        }
    }

    private static String level(Level level) {
        return text(level.name()) + ": " + text(level.setting());
    }

    private void numbers(Plan plan) {
        plan.noise().ifPresent(noise -> line("noise", noise(noise)));
        line("errors", "{false alarm: " + percent(100 * plan.errors().falseAlarm()) + ", missed gain: " + percent(100 * plan.errors().missedGain()) + "}");
        line("looks", Integer.toString(plan.looks()));
        String order = ", order: " + plan.layout().order().word() + "}";
        if (plan.layout().kind() == Kind.PAIRED) {
            line("layout", "{pairs: " + plan.layout().total() + order);
        } else if (plan.layout().kind() == Kind.ALTERNATING) {
            line("layout", "{trials: " + counts(plan.layout().counts()) + order);
        } else {
            line("layout", "{sessions: " + counts(plan.layout().counts()) + ", trials per condition: " + plan.layout().trialsPerCondition() + order);
        }
        StringBuilder budget = new StringBuilder();
        plan.budget().trialSeconds().ifPresent(seconds -> budget.append("trial: ").append(time(seconds)).append(", "));
        budget.append("soak: ").append(time(plan.budget().soakSeconds()));
        Map<String, Double> setUp = plan.budget().setUpSeconds();
        if (!setUp.isEmpty()) {
            budget.append(", set-up: ").append(setUp.containsKey("") ? time(setUp.get(""))
                    : setUp.entrySet().stream().map(entry -> text(entry.getKey()) + ": " + time(entry.getValue())).collect(Collectors.joining(", ", "{", "}")));
        }
        if (plan.sessionFactor().isPresent()) {
            budget.append(", outdoors: ").append(list(plan.budget().outdoors()));
        }
        plan.budget().outdoorsAtMostSeconds().ifPresent(seconds -> budget.append(", outdoors at most: ").append(time(seconds)));
        line("budget", "{" + budget + "}");
    }

    private static String noise(NoiseAssumption noise) {
        return "{run to run: " + percent(noise.runCvPercent()) + ", session to session: " + percent(noise.sessionCvPercent())
                + whole(", run degrees of freedom: ", noise.runDf()) + whole(", session degrees of freedom: ", noise.sessionDf())
                + whole(", trials per session: ", noise.trialsPerSession())
                + ", from: " + text(noise.from()) + "}";
    }

    private static String whole(String label, OptionalDouble number) {
        return number.isPresent() ? label + Math.round(number.getAsDouble()) : "";
    }

    private void limits(Plan plan) {
        StringBuilder start = new StringBuilder();
        plan.start().dieWithinKelvins().ifPresent(kelvins -> start.append(", die temperature within: ").append(number(kelvins)).append(" K of first trial"));
        plan.start().batteryAtLeastPercent().ifPresent(percent -> start.append(", battery at least: ").append(percent(percent)));
        plan.start().powerSource().ifPresent(source -> start.append(", power source: ").append(source));
        if (!start.isEmpty()) {
            line("start", "{" + start.substring(2) + "}");
        }
        StringBuilder abort = new StringBuilder();
        plan.abort().dieAboveCelsius().ifPresent(celsius -> abort.append(", die temperature above: ").append(number(celsius)).append(" °C"));
        plan.abort().batteryBelowPercent().ifPresent(percent -> abort.append(", battery below: ").append(percent(percent)));
        plan.abort().cellBelowCelsiusWhileCharging()
                .ifPresent(celsius -> abort.append(", cell temperature below: ").append(number(celsius)).append(" °C while charging"));
        if (!abort.isEmpty()) {
            line("abort", "{" + abort.substring(2) + "}");
        }
    }

    private void workload(Plan plan) {
        boolean any = !plan.workload().instruction().isEmpty() || !plan.workload().command().isEmpty() || !plan.workload().commandByLevel().isEmpty()
                || plan.workload().scorePattern().isPresent();
        if (!any) {
            return;
        }
        out.append("workload:\n");
        if (!plan.workload().instruction().isEmpty()) {
            line("  instruction", text(plan.workload().instruction()));
        }
        if (!plan.workload().command().isEmpty()) {
            line("  command", list(plan.workload().command()));
        }
        if (!plan.workload().commandByLevel().isEmpty()) {
            out.append("  command by level:\n");
            plan.workload().commandByLevel().forEach((level, command) -> line("    " + text(level), list(command)));
        }
        plan.workload().scorePattern().ifPresent(pattern -> line("  score pattern", text(pattern)));
    }

    private void line(String key, String value) {
        out.append(key).append(": ").append(value).append('\n');
    }

    private static String counts(Map<String, Integer> counts) {
        if (counts.containsKey("")) {
            return Integer.toString(counts.get(""));
        }
        return counts.entrySet().stream().map(entry -> text(entry.getKey()) + ": " + entry.getValue()).collect(Collectors.joining(", ", "{", "}"));
    }

    private static String list(List<String> items) {
        return items.stream().map(PlanWriter::text).collect(Collectors.joining(", ", "[", "]"));
    }

    /** Plain where YAML reads it back unchanged, else in double quotes. */
    static String text(String text) {
        boolean plain = text.matches("[\\p{L}\\p{N}°−-][\\p{L}\\p{N} ./°%()?'+−-]*") && !text.endsWith(" ") && !text.matches("-( .*)?") && !text.equals("null")
                && !text.contains(" -") && !text.startsWith("---");
        if (plain) {
            return text;
        }
        StringBuilder quoted = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"' || c == '\\') {
                quoted.append('\\').append(c);
            } else if (c == '\n') {
                quoted.append("\\n");
            } else if (c < 0x20 || c >= 0x7f && c < 0xa0 || c == '\ufeff' || c == '\u2028' || c == '\u2029') {
                quoted.append(String.format(Locale.ROOT, "\\u%04X", (int) c));
            } else {
                quoted.append(c);
            }
        }
        return quoted.append('"').toString();
    }

    private static String percent(double percent) {
        return number(percent) + " %";
    }

    private static String time(double seconds) {
        if (seconds >= 3600 && seconds % 3600 == 0) {
            return number(seconds / 3600) + " h";
        }
        return seconds >= 60 && seconds % 60 == 0 ? number(seconds / 60) + " min" : number(seconds) + " s";
    }

    private static String number(double number) {
        if (number == Math.rint(number) && Math.abs(number) < 1e15) {
            return Long.toString((long) number);
        }
        return new java.math.BigDecimal(Double.toString(number)).round(new java.math.MathContext(12)).stripTrailingZeros().toPlainString();
    }
}
