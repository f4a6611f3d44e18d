package coldproof.trace;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Summarises traces. */
public final class TraceSummaries {
    private static final double STEADY_KELVINS = 1.0; // K between the third and the last quarter; common practice for short benches
    private static final double STEADY_SHARE = 0.015; // of power and clock between the third and the last quarter; common practice
    private static final Channel[] HELD = {Channel.PACKAGE_POWER, Channel.SYSTEM_POWER, Channel.CLOCK, Channel.DIE_TEMPERATURE};

    private TraceSummaries() {}

    /**
     * Summarises one trace.
     *
     * @param series the trace
     * @param airCelsius air around the device as the person gave it; it goes before a measured one
     * @return the summary, or empty when the series has fewer than three rows
     */
    public static Optional<TraceSummary> summarise(Series series, OptionalDouble airCelsius) {
        return WorkFinder.find(series).map(work -> summarise(series, work, airCelsius));
    }

    private static TraceSummary summarise(Series series, Work work, OptionalDouble airCelsius) {
        Channel power = series.has(Channel.PACKAGE_POWER) ? Channel.PACKAGE_POWER : Channel.SYSTEM_POWER;
        int half = work.entryAt(series, work.lengthSeconds() / 2);
        Map<Channel, Level> sustained = new EnumMap<>(Channel.class);
        Map<Channel, Double> whole = new EnumMap<>(Channel.class);
        Map<Channel, Double> before = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            LevelFinder.of(series, channel, half, work.to()).ifPresent(level -> sustained.put(channel, level));
            put(whole, channel, series.mean(channel, work.from(), work.to()));
            put(before, channel, series.mean(channel, 0, work.from()));
        }
        Boost boost = Boost.of(series, work, power);
        double settle = settle(series, work, sustained);
        List<TraceRemark> remarks = new ArrayList<>(series.remarks());
        if (work.toldBy() == Channel.TIME) {
            remarks.add(0, new TraceRemark(0, "nothing shows where the work begins: the whole log is taken for work"));
        } else if (!work.beginIsSeen()) {
            remarks.add(0, new TraceRemark(0, "the log begins in the work: what came before is not known, and a boost is counted from the first row"));
        }
        double air = airCelsius.orElse(level(sustained, Channel.AMBIENT));
        double resistance = (level(sustained, Channel.DIE_TEMPERATURE) - air) / level(sustained, Channel.PACKAGE_POWER);
        Blocks blocks = Blocks.of(series, work);
        ThermalFit fit = ThermalFit.of(blocks, boost, power);
        return new TraceSummary(series.rows(), series.samplingSeconds(), series.gaps(), series.map(), work,
                phases(series, work, boost, settle), boost, sustained, whole, before, settle,
                new TraceSummary.Thermal(resistance, air, fit.timeConstantSeconds(), fit.asymptoteCelsius()),
                whole.containsKey(power) ? whole.get(power) * work.lengthSeconds() / 3600 : Double.NaN,
                unsteady(series, work, half), blocks, Changes.of(blocks, power), remarks);
    }

    private static void put(Map<Channel, Double> map, Channel channel, double value) {
        if (!Double.isNaN(value)) {
            map.put(channel, value);
        }
    }

    private static double level(Map<Channel, Level> levels, Channel channel) {
        return levels.containsKey(channel) ? levels.get(channel).mean() : Double.NaN;
    }

    /** Goes back from the end in steps of five seconds for as long as all that is held stays near its sustained level. */
    private static double settle(Series series, Work work, Map<Channel, Level> sustained) {
        double step = Math.max(5, series.stepSeconds());
        double settle = Double.NaN;
        for (double to = work.lengthSeconds(); to - step >= 0; to -= step) {
            int first = work.entryAt(series, to - step);
            int last = Math.max(first + 1, work.entryAt(series, to));
            for (Channel channel : HELD) {
                Level level = sustained.get(channel);
                if (level != null) {
                    double allowed = channel == Channel.DIE_TEMPERATURE ? Math.max(2, 3 * level.wander()) : Math.max(0.03 * level.mean(), 3 * level.wander());
                    double away = Math.abs(series.mean(channel, first, last) - level.mean());
                    if (away > allowed) {
                        return settle;
                    }
                }
            }
            settle = to - step;
        }
        return settle < step ? 0 : settle;
    }

    private static List<Phase> phases(Series series, Work work, Boost boost, double settle) {
        double length = work.lengthSeconds();
        double boostEnd = Double.isNaN(boost.seconds()) ? 0 : Math.min(length, boost.seconds());
        double settled = Double.isNaN(settle) ? length : Math.max(boostEnd, settle);
        List<Phase> phases = new ArrayList<>();
        addPhase(phases, Phase.Kind.BOOST, series, work, 0, boostEnd);
        addPhase(phases, Phase.Kind.SETTLING, series, work, boostEnd, settled);
        addPhase(phases, Phase.Kind.SUSTAINED, series, work, settled, length);
        return phases;
    }

    private static void addPhase(List<Phase> phases, Phase.Kind kind, Series series, Work work, double from, double to) {
        if (to - from < series.stepSeconds() / 2) {
            return;
        }
        int first = work.entryAt(series, from);
        int last = to >= work.lengthSeconds() ? work.to() : Math.max(first + 1, work.entryAt(series, to));
        Map<Channel, Double> means = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            put(means, channel, series.mean(channel, first, last));
        }
        phases.add(new Phase(kind, from, to, means));
    }

    private static List<String> unsteady(Series series, Work work, int half) {
        List<String> moving = new ArrayList<>();
        int threeQuarters = work.entryAt(series, 0.75 * work.lengthSeconds());
        for (Channel channel : HELD) {
            double third = series.mean(channel, half, threeQuarters);
            double last = series.mean(channel, threeQuarters, work.to());
            boolean temperature = channel == Channel.DIE_TEMPERATURE;
            double change = temperature ? last - third : (last / third - 1) * 100;
            double allowed = temperature ? STEADY_KELVINS : 100 * STEADY_SHARE;
            if (Math.abs(change) > allowed) {
                moving.add(String.format(Locale.ROOT, "%s still %s by %.1f %s between the third and the last quarter of the work", channel.label(),
                        change > 0 ? "rose" : "fell", Math.abs(change), temperature ? "K" : "%"));
            }
        }
        return moving;
    }
}
