package coldproof.face.cli;

import coldproof.job.Underway;
import coldproof.plan.Position;
import coldproof.report.text.Figures;
import coldproof.report.text.Harmless;
import coldproof.report.text.Wrap;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Shows a person at a terminal what runs and for how long, in a line that is written over and goes away at the end. Elsewhere, and in the console,
 * which has no such line, it is said once that something runs or waits.
 */
final class RunningLine implements Underway {
    private final Streams streams;
    private final LiveLine line;

    RunningLine(Streams streams) {
        this.streams = streams;
        line = new LiveLine(streams);
    }

    @Override
    public void waits(double elapsedSeconds, List<String> deviations) {
        String why = Harmless.line(String.join("; ", deviations));
        show("waits " + clock(elapsedSeconds) + "  " + why);
        say(elapsedSeconds > 0 ? "" : "waits: " + why);
    }

    private static String clock(double elapsedSeconds) {
        long seconds = Math.round(elapsedSeconds);
        return String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60);
    }

    @Override
    public void begins(Position position, List<String> command) {
        String what = "trial " + position.number() + " runs: " + Harmless.line(String.join(" ", command));
        show(what);
        say(what);
    }

    @Override
    public void goesOn(double elapsedSeconds, OptionalDouble dieCelsius, OptionalDouble batteryPercent) {
        StringBuilder text = new StringBuilder(clock(elapsedSeconds));
        dieCelsius.ifPresent(celsius -> text.append("  die ").append(Figures.fixed(celsius, 1)).append(" °C"));
        batteryPercent.ifPresent(percent -> text.append("  battery ").append(Figures.fixed(percent, 0)).append(" %"));
        show(text.append("  Ctrl-C stops it").toString());
    }

    @Override
    public void ends() {
        show("");
    }

    private void say(String once) {
        if (!streams.interactive() && !once.isEmpty()) {
            streams.err().print(Wrap.at(streams.columns(), once));
            streams.err().flush();
        }
    }

    private void show(String text) {
        if (streams.interactive()) {
            line.show(text);
        }
    }
}
