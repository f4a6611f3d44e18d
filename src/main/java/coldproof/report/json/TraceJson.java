package coldproof.report.json;

import coldproof.trace.Channel;
import coldproof.trace.ChannelMap.MappedColumn;
import coldproof.trace.Level;
import coldproof.trace.Phase;
import coldproof.trace.TraceRemark;
import coldproof.trace.TraceSummary;
import java.util.EnumMap;
import java.util.Map;

/** The document of {@code trace --json}. */
public final class TraceJson {
    private static final Channel[] ALWAYS = {Channel.PACKAGE_POWER, Channel.CLOCK, Channel.DIE_TEMPERATURE, Channel.FAN};

    private TraceJson() {}

    /** A summary. Powers in W, clocks in MHz, temperatures in °C, fans in rpm, shares in %. */
    public static JsonObject of(TraceSummary summary) {
        JsonObject json = new JsonObject().put("rows", summary.rows()).put("samplingSeconds", summary.samplingSeconds())
                .put("channels", summary.map().all().stream().map(TraceJson::channel).toList()).put("gaps", summary.gaps())
                .put("work", new JsonObject().put("seconds", summary.work().lengthSeconds()).put("toldBy", summary.work().toldBy().label()))
                .put("phases", summary.phases().stream().map(TraceJson::phase).toList()).put("powerChanges", summary.changes()).put("boostSeconds", summary.boost().seconds())
                .put("boostWatts", summary.boost().watts()).put("settleSeconds", summary.settleSeconds());
        json.put("sustained", sustained(summary.sustained())).put("sustainedStandardError", errors(summary.sustained()));
        TraceSummary.Thermal thermal = summary.thermal();
        return json.put("timeConstantSeconds", thermal.timeConstantSeconds()).put("asymptoteCelsius", thermal.asymptoteCelsius())
                .put("thermalResistance", thermal.kelvinsPerWatt()).put("airCelsius", thermal.airCelsius())
                .put("energyWattHours", summary.energyWattHours()).put("steady", summary.isSteady()).put("unsteady", summary.unsteady())
                .put("problems", summary.remarks().stream().map(TraceJson::remark).toList());
    }

    /** Sustained means by channel; the four that matter most are always there, null when not measured. */
    static JsonObject means(Map<Channel, Double> means) {
        JsonObject json = new JsonObject();
        for (Channel channel : ALWAYS) {
            json.put(key(channel), means.getOrDefault(channel, Double.NaN));
        }
        means.forEach((channel, mean) -> json.put(key(channel), mean));
        return json;
    }

    private static JsonObject sustained(Map<Channel, Level> levels) {
        Map<Channel, Double> means = new EnumMap<>(Channel.class);
        levels.forEach((channel, level) -> means.put(channel, level.mean()));
        return means(means);
    }

    private static JsonObject errors(Map<Channel, Level> levels) {
        JsonObject json = new JsonObject();
        levels.forEach((channel, level) -> json.put(key(channel), level.standardError()));
        return json;
    }

    private static JsonObject channel(MappedColumn column) {
        return new JsonObject().put("channel", column.channel().label()).put("column", column.name()).put("unit", column.unit().symbol())
                .put("number", column.index() + 1).put("known", column.origin().label());
    }

    private static JsonObject phase(Phase phase) {
        JsonObject means = new JsonObject();
        phase.means().forEach((channel, mean) -> means.put(key(channel), mean));
        return new JsonObject().put("from", phase.fromSeconds()).put("to", phase.toSeconds()).put("kind", phase.kind().label()).put("means", means);
    }

    private static JsonObject remark(TraceRemark remark) {
        JsonObject json = new JsonObject();
        return (remark.line() > 0 ? json.put("line", remark.line()) : json.putNull("line")).put("text", remark.text());
    }

    static String key(Channel channel) {
        return switch (channel) {
            case TIME -> "time";
            case DIE_TEMPERATURE -> "dieTemperature";
            case BOARD_TEMPERATURE -> "boardTemperature";
            case SURFACE_TEMPERATURE -> "surfaceTemperature";
            case PACKAGE_POWER -> "power";
            case SYSTEM_POWER -> "systemPower";
            case CLOCK -> "clock";
            case FAN -> "fan";
            case UTILISATION -> "utilisation";
            case BATTERY_CHARGE -> "batteryCharge";
            case BATTERY_TEMPERATURE -> "batteryTemperature";
            case AMBIENT -> "ambient";
        };
    }
}
