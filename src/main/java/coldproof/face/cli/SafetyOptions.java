package coldproof.face.cli;

import coldproof.job.Machine;
import coldproof.job.OutdoorJob;
import coldproof.job.PlaceText;
import coldproof.job.SafetyGate;
import coldproof.job.Taken;
import coldproof.physics.Site;
import coldproof.reason.safety.Reading;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;

/** The options that carry readings for the safety rules; the same on every verb that takes them. */
final class SafetyOptions {
    private record Given(String name, Reading reading, String label, String purpose) {}

    private static final List<String> DAY = List.of("--air", "--wind", "--battery", "--power", "--battery-energy", "--draw");

    private SafetyOptions() {}

    private static List<Given> values() {
        return List.of(
                new Given("--air", Reading.AIR, "TEMPERATURE", "Temperature of the test air, such as -9C."),
                new Given("--humidity", Reading.HUMIDITY, "PERCENT", "Relative humidity of the test air."),
                new Given("--wind", Reading.WIND, "SPEED", "Wind at 10 m height, such as 3m/s; at face height give 1.5 times what you measure."),
                new Given("--indoors", Reading.ROOM, "TEMPERATURE", "Temperature of the room the device comes back to."),
                new Given("--indoor-humidity", Reading.ROOM_HUMIDITY, "PERCENT", "Relative humidity of that room."),
                new Given("--device-temperature", Reading.DEVICE, "TEMPERATURE", "Coldest (in the heat: hottest) part of the device that was measured."),
                new Given("--cell-temperature", Reading.CELL, "TEMPERATURE", "Temperature of the battery's cells."),
                new Given("--battery", Reading.BATTERY, "PERCENT", "State of charge."),
                new Given("--power", Reading.POWER, "wall|battery", "Where the power comes from."),
                new Given("--precipitation", Reading.PRECIPITATION, "none|snow|rain|fog", "What falls from the sky."),
                new Given("--residual-current", Reading.RESIDUAL_CURRENT, "yes|no|unknown", "Whether the outlet is behind a tested residual-current device of 30 mA or less."),
                new Given("--fan", Reading.FAN, "auto|maximum|stopped", "How the fan is set."),
                new Given("--altitude", Reading.ALTITUDE, "HEIGHT", "Height above the sea."),
                new Given("--stay", Reading.STAY, "TIME", "Planned time in the test air at a time."),
                new Given("--soak", Reading.SOAK, "TIME", "Time to settle before the first trial."),
                new Given("--battery-energy", Reading.BATTERY_ENERGY, "ENERGY", "Energy of the full battery as it is now, such as 52Wh."),
                new Given("--draw", Reading.DRAW, "POWER", "Mean power drawn from the battery, such as 30W."));
    }

    private static List<Given> flags() {
        return List.of(
                new Given("--charging", Reading.CHARGING, "yes", "The battery is being charged."),
                new Given("--charging-inhibited", Reading.CHARGING_INHIBITED, "yes", "Wall power does not charge it, or it is full: somebody made sure."),
                new Given("--extension-lead", Reading.EXTENSION_LEAD, "yes", "An extension lead is used."),
                new Given("--alone", Reading.ALONE, "yes", "Nobody else is there."),
                new Given("--opened", Reading.OPENED, "yes", "The case is or will be opened."),
                new Given("--under-roof", Reading.OUTDOORS, "no", "The test air is a room's or a chamber's, not the open air."));
    }

    static void describe(CommandSpec spec) {
        values().forEach(given -> Options.value(spec, given.name, given.label, given.purpose));
        flags().forEach(given -> Options.flag(spec, given.name, given.purpose));
    }

    /** What limits a stay in the open air, for planning. */
    static void describeDay(CommandSpec spec) {
        values().stream().filter(given -> DAY.contains(given.name)).forEach(given -> Options.value(spec, given.name, given.label, given.purpose));
        describePlace(spec);
    }

    static void describePlace(CommandSpec spec) {
        Options.value(spec, "--place", "LATITUDE,LONGITUDE", "Where the test air is, for the sun, such as 47.61,12.32 (default: as the study says).");
        Options.value(spec, "--at", "TIME", "When it begins, for the sun, such as 15:30 or 2026-01-14T15:30.");
    }

    static Optional<Site> site(Invocation call) {
        return call.text("--place").map(text -> PlaceText.read("--place", text));
    }

    static Optional<Instant> moment(Invocation call) {
        return call.text("--at").map(text -> PlaceText.moment("--at", text, Machine.atHand()));
    }

    static OutdoorJob.Day day(Invocation call) {
        List<Taken> taken = new ArrayList<>();
        values().stream().filter(given -> DAY.contains(given.name))
                .forEach(given -> call.text(given.name).ifPresent(text -> taken.add(new Taken(given.reading, given.name, text))));
        return new OutdoorJob.Day(taken, site(call), moment(call));
    }

    /** What a person brings to the gate beside readings. */
    static void describeGate(CommandSpec spec) {
        Options.value(spec, "--acknowledged-by", "NAME", "The person at the bench who has seen to every caution that holds.");
        Options.values(spec, "--set-aside", "RULE=REASON", "Set a stop aside with a reason, which stands in every verdict; may stand several times.");
    }

    /** What the person brings to the gate. */
    static SafetyGate.Pass pass(Invocation call) {
        Map<String, String> setAside = new LinkedHashMap<>();
        for (String text : call.texts("--set-aside")) {
            int equals = text.indexOf('=');
            if (equals <= 0) {
                throw Invocation.refused("--set-aside", "\"" + text + "\" names no reason", "RULE=REASON", "Write such as: --set-aside precipitation=\"under the eaves\"");
            }
            setAside.put(text.substring(0, equals).strip(), text.substring(equals + 1).strip());
        }
        return new SafetyGate.Pass(taken(call), call.text("--acknowledged-by"), setAside);
    }

    /** What was given, in the order of the options. */
    static List<Taken> taken(Invocation call) {
        List<Taken> taken = new ArrayList<>();
        values().forEach(given -> call.text(given.name).ifPresent(text -> taken.add(new Taken(given.reading, given.name, text))));
        flags().forEach(given -> {
            if (call.flag(given.name)) {
                taken.add(new Taken(given.reading, given.name, given.label));
            }
        });
        return taken;
    }
}
