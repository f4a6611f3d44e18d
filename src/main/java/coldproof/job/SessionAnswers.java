package coldproof.job;

import coldproof.plan.Position;
import coldproof.quantity.Dimension;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Checklist;
import coldproof.reason.checklist.StartReadings;
import coldproof.reason.checklist.Step;
import coldproof.report.text.ChecklistText;
import coldproof.study.Observed;
import coldproof.study.SessionClosed;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Takes what opens and closes a session and what is read in it: readings, safety, soak, going on after a break. */
final class SessionAnswers {
    private final BenchStudy study;
    private final LogPlace place;

    SessionAnswers(BenchStudy study, LogPlace place) {
        this.study = study;
        this.place = place;
    }

    LogReply resume(String text) {
        boolean newSoak = text.equalsIgnoreCase("soak");
        if (!newSoak) {
            LogJob.onlyEnter(text, "Enter to go on, or soak to let the device settle anew first");
        }
        study.resume(newSoak ? "with a new soak" : "");
        place.isBack();
        if (newSoak) {
            study.reopenSession();
        }
        place.begin();
        return LogReply.of("Going on. Recorded.");
    }

    LogReply reading(Ask ask, String text) {
        Optional<Observed> reading = text.isEmpty() ? place.offers().byEnter(ask) : text.equals(Offers.NOT_READ) ? Optional.empty() : Optional.of(BenchReading.read(ask, text));
        reading.ifPresent(read -> place.readings().put(BenchReading.name(ask), read));
        List<String> stops = StartReadings.stops(place.view().plan(), place.readings());
        if (!stops.isEmpty()) {
            place.readings().remove(BenchReading.name(ask));
            throw new Refused(Problem.of(String.join(" ", stops), Place.named("trial " + place.step().position().orElseThrow().number()), "",
                    "Do not start the trial. Put it right and read again, or pause, skip or abort."));
        }
        place.asks().poll();
        return place.step().kind() == Step.Kind.START_CONDITIONS && place.asks().isEmpty() ? recordReadings() : LogReply.of();
    }

    private LogReply recordReadings() {
        Position position = place.step().position().orElseThrow();
        List<String> deviations = StartReadings.deviations(place.view().plan(), place.view().state(), position, place.readings());
        List<String> said = new ArrayList<>(List.of(ChecklistText.startRecorded(place.readings())));
        try {
            study.startConditions(position, place.readings(), deviations);
        } catch (Refused notWritten) {
            place.asks().add(lastAsk());
            throw notWritten;
        }
        said.addAll(ChecklistText.deviations(deviations));
        place.begin();
        return new LogReply(said, false);
    }

    private Ask lastAsk() {
        List<Ask> wanted = BenchReading.startAsks(place.view().plan());
        return wanted.get(wanted.size() - 1);
    }

    LogReply safety(String text) {
        List<String> said = place.safety().answer(text);
        if (!place.safety().shut()) {
            place.asks().poll();
        }
        return new LogReply(said, false);
    }

    LogReply openSession(String text) {
        LogJob.onlyEnter(text, "Enter to begin the session");
        Position position = place.step().position().orElseThrow();
        place.safety().beforeOpening(position, place.readings());
        if (place.safety().shut()) {
            place.askSafety();
            return LogReply.of();
        }
        List<String> deviations = BenchReading.sessionDeviations(place.view().plan(), position, place.readings());
        study.openSessionOf(position);
        if (!place.readings().isEmpty()) {
            study.sessionReadings(position.session(), place.readings(), deviations);
        }
        place.safety().opened();
        place.begin();
        return new LogReply(ChecklistText.deviations("Session " + position.session() + " begun. Recorded.", deviations), false);
    }

    LogReply soaked(String text) {
        boolean unknown = text.equalsIgnoreCase(LogJob.UNKNOWN);
        double seconds = unknown ? Double.NaN : text.isEmpty() ? place.stepSeconds() : soakTime(text);
        Observed soak = unknown ? Observed.of(LogJob.UNKNOWN) : Observed.of(Math.rint(seconds), "s");
        List<String> deviations = StartReadings.soakDeviations(place.view().plan(), place.step().session(), seconds);
        study.sessionReadings(place.step().session(), Map.of(Checklist.SOAK, soak), deviations);
        place.begin();
        return new LogReply(ChecklistText.deviations("Soak recorded.", deviations), false);
    }

    private static double soakTime(String text) {
        try {
            double seconds = QuantityText.read(text, Dimension.TIME, QuantityText.Bare.REFUSED);
            if (seconds >= 0 && seconds <= 7 * 86_400) {
                return seconds;
            }
            throw new Refused(Problem.of("\"" + text + "\" is out of range", Place.named("soak"), "from 0 min to 7 days", "Type it again."));
        } catch (QuantityText.Unreadable unreadable) {
            throw new Refused(Problem.of("\"" + text + "\" is no time", Place.named("soak"), "Enter when it has settled, or how long it took, such as 20 min",
                    "Type it again."));
        }
    }

    LogReply closeSession(String text) {
        LogJob.onlyEnter(text, "Enter to end the session");
        int session = place.step().session();
        List<String> said = new ArrayList<>(List.of("Session " + session + " is done. Recorded."));
        said.addAll(place.comingIn());
        study.endSession(SessionClosed.Ending.DONE, "");
        place.begin();
        return new LogReply(said, false);
    }
}
