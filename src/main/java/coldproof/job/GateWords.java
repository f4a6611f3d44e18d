package coldproof.job;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.reason.safety.Caution;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyCard;
import coldproof.reason.safety.SafetyLevel;
import coldproof.report.text.SafetyFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What the gate says. */
final class GateWords {
    private GateWords() {}

    static List<Problem> blocked(List<Caution> stops) {
        return stops.stream().map(GateWords::blocked).toList();
    }

    private static Problem blocked(Caution stop) {
        String way = stop.rule().mayBeSetAside()
                ? " Measure again when it is over; or set the rule aside with a reason, which every verdict shows." : " Measure again when it is over.";
        return Problem.of("STOP: " + stop.rule().card() + decided(stop), Place.named("safety rule " + stop.rule().id()), expected(stop),
                stop.rule().text() + way + " Nothing was recorded.");
    }

    private static String decided(Caution caution) {
        String numbers = caution.decided().entrySet().stream().map(one -> one.getKey().word() + " " + SafetyFigures.of(one.getKey(), one.getValue()))
                .collect(Collectors.joining(", "));
        return numbers.isEmpty() ? "" : " (" + numbers + ")";
    }

    private static String expected(Caution stop) {
        return stop.rule().when().isEmpty() ? "" : "not all of: " + stop.rule().when().stream().map(SafetyFigures::condition).collect(Collectors.joining("; "));
    }

    /** What holds the gate shut, a line each, for the checklist. */
    static List<String> lines(SafetyGate.Standing standing) {
        List<String> lines = new ArrayList<>();
        standing.stops().forEach(stop -> lines.add("STOP: " + stop.rule().card() + decided(stop) + " [" + stop.rule().id() + "]"));
        standing.cares().forEach(care -> lines.add("care: " + care.rule().card())); // short, so that a small screen shows them all
        if (standing.stops().isEmpty()) {
            lines.add("Who has seen to it? The name goes into the journal.");
        } else {
            lines.add("Wait until it is over and measure again, such as: precipitation none, or device temperature 15 C. A rule is set aside by: aside "
                    + standing.stops().get(0).rule().id() + " REASON, which every verdict shows. Or pause, skip, abort.");
        }
        return lines;
    }

    /** One problem for each care, the way out with the last. */
    static List<Problem> unacknowledged(List<Caution> open) {
        List<Problem> problems = new ArrayList<>();
        for (Caution care : open) {
            problems.add(Problem.of("care: " + care.rule().card() + decided(care), Place.named("safety rule " + care.rule().id()), "", care.rule().text()));
        }
        problems.add(Problem.of(open.size() == 1 ? "one caution is not acknowledged" : open.size() + " cautions are not acknowledged", Place.named("safety"),
                "the name of the person at the bench who has seen to them",
                "Nothing was recorded. See to them, then acknowledge them by name: --acknowledged-by NAME."));
        return problems;
    }

    static List<String> remarks(SafetyCard card, boolean measured) {
        List<String> remarks = new ArrayList<>();
        if (!measured && card.values().get(Reading.OUTDOORS).word().equals("yes")) {
            remarks.add("Nobody measured the air of this session: only the plan's own figures were judged. Give --air, --humidity and --wind.");
        }
        if (!measured && !card.of(SafetyLevel.CARE).isEmpty()) {
            remarks.add("Take care: " + card.of(SafetyLevel.CARE).stream().map(caution -> caution.rule().card()).collect(Collectors.joining(" ")));
        }
        card.doubts().forEach(doubt -> remarks.add("Hard to believe: " + doubt.text() + " Measure again."));
        return remarks;
    }
}
