package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.physics.Site;
import coldproof.quantity.Refused;
import coldproof.reason.safety.OutdoorBudget.Kind;
import coldproof.reason.safety.OutdoorStay;
import coldproof.reason.safety.Reading;
import coldproof.reason.sizing.CheapestStudy;
import coldproof.reason.sizing.SearchTerms;
import coldproof.reason.sizing.StudyLimits.Limit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutdoorJobTest {
    private static final String PLAN = """
            coldproof: 1
            title: Does winter air lift the speed of the trail laptop?
            device: trail laptop
            metric: {name: rate, unit: frames/s, better: higher}
            compare: {factor: ambient, baseline: room, against: yard}
            matters: 3 %
            factors:
              ambient: {change: per session, levels: {room: 21 °C, yard: -12 °C}}
            noise: {run to run: 1 %, session to session: 0.5 %}
            layout: {sessions: {room: 3, yard: 3}, trials per condition: 4, order: counterbalanced}
            budget: {trial: 10 min, soak: 20 min, set-up: {room: 5 min, yard: 10 min}, outdoors: [yard]}
            seed: 7
            """;
    /** A place at 47.6° north; the shortest day has 8 h 26 min of sun there, the midsummer day 15 h 59 min (SunTest holds the sun to an ephemeris). */
    private static final Site VALLEY = new Site(47.6, 12.3);
    private static final Instant MIDWINTER = Instant.parse("2026-12-21T08:00:00Z");

    @TempDir
    Path folder;

    private StudyView study(String plan, String safety) throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), plan);
        if (!safety.isEmpty()) {
            Files.writeString(folder.resolve("safety.yaml"), safety);
        }
        return StudyView.read(folder);
    }

    private static OutdoorJob.Day day(Optional<Site> site, Optional<Instant> begin, Taken... taken) {
        return new OutdoorJob.Day(List.of(taken), site, begin);
    }

    @Test
    void everyOutdoorSessionStandsBesideItsLimit() throws IOException {
        List<OutdoorStay> stays = OutdoorJob.stays(study(PLAN, ""), OutdoorJob.Day.UNKNOWN, MIDWINTER);
        assertEquals(3, stays.size());
        OutdoorStay stay = stays.get(0);
        assertEquals(70 * 60, stay.seconds()); // 10 min opening, 20 min soak, 4 trials of 10 min
        assertEquals(Kind.COLD, stay.budget().binding().orElseThrow().kind());
        OutdoorJob.refuseWhatDoesNotFit(stays);
    }

    @Test
    void aSessionLongerThanTheDayAllowsIsRefusedWithItsNumbers() throws IOException {
        StudyView study = study(PLAN, "");
        List<OutdoorStay> stays = OutdoorJob.stays(study, day(Optional.of(VALLEY), Optional.of(Instant.parse("2026-12-21T13:45:00Z"))), MIDWINTER);
        Refused refused = assertThrows(Refused.class, () -> OutdoorJob.refuseWhatDoesNotFit(stays));
        assertEquals(1, refused.problems().size(), "sessions alike are told together");
        assertTrue(refused.problems().get(0).what().contains("keeps you out for 70 min, longer than daylight allows"), refused.problems()::toString);
    }

    @Test
    void withoutATimeTheWholeDayCounts() throws IOException {
        OutdoorStay stay = OutdoorJob.stays(study(PLAN, "place: {latitude: 47.6, longitude: 12.3}\n"), OutdoorJob.Day.UNKNOWN, MIDWINTER).get(0);
        double daylight = stay.budget().limits().stream().filter(limit -> limit.kind() == Kind.DAYLIGHT).findFirst().orElseThrow().seconds();
        assertEquals(8 * 60 + 26 - 30, daylight / 60, 3); // to the nearest minutes of the almanac's day, half an hour off
    }

    @Test
    void aPolarNightAllowsNothing() throws IOException {
        OutdoorStay stay = OutdoorJob.stays(study(PLAN, ""), day(Optional.of(new Site(78.2, 15.6)), Optional.empty()), MIDWINTER).get(0);
        assertEquals(0, stay.budget().binding().orElseThrow().seconds());
        assertEquals(Kind.DAYLIGHT, stay.budget().binding().orElseThrow().kind());
    }

    @Test
    void aForecastGoesBeforeThePlansOwnAir() throws IOException {
        OutdoorStay stay = OutdoorJob.stays(study(PLAN, ""), day(Optional.empty(), Optional.empty(), new Taken(Reading.AIR, "--air", "-30C"),
                new Taken(Reading.WIND, "--wind", "30 km/h")), MIDWINTER).get(0);
        assertTrue(!stay.fits());
    }

    @Test
    void theSearchForTheCheapestPlanStaysWithinTheBattery() throws IOException {
        StudyView study = study(PLAN, "battery energy: 60 Wh\ndraw: 14 W\n");
        SearchTerms terms = OutdoorJob.within(study, SearchTerms.USUAL);
        // 60 Wh * 0.7 * (0.5 + 0.5 * 6 / 45) * 0.8 = 19.04 Wh at 14 W: 81.6 min
        assertEquals(81.6, terms.limits().most().get(Limit.OUTDOORS_PER_OUTING) / 60, 0.1);
        CheapestStudy cheapest = RunsJob.cheapest(study, SearchTerms.USUAL);
        cheapest.advice().best().ifPresent(best -> assertTrue(30 + 10 * best.trialsPerCondition() <= 81.6, best::toString));
        assertTrue(cheapest.advice().best().isPresent());
    }

    @Test
    void aTighterLimitOfThePersonStays() throws IOException {
        StudyView study = study(PLAN, "");
        SearchTerms tight = new SearchTerms(SearchTerms.USUAL.limits().with(Limit.OUTDOORS_PER_OUTING, 3600), 3, 0, 0, 0);
        assertEquals(3600, OutdoorJob.within(study, tight).limits().most().get(Limit.OUTDOORS_PER_OUTING));
    }
}
