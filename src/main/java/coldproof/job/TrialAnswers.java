package coldproof.job;

import coldproof.plan.Position;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Doubt;
import coldproof.reason.checklist.ScoreText;
import coldproof.reason.looks.LookPoint;
import coldproof.reason.looks.LookSchedule;
import coldproof.report.text.ChecklistText;
import coldproof.study.Source;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Takes the score of a trial, has it confirmed where it is hard to believe, and says when a look is due. */
final class TrialAnswers {
    private final BenchStudy study;
    private final LogPlace place;

    TrialAnswers(BenchStudy study, LogPlace place) {
        this.study = study;
        this.place = place;
    }

    LogReply score(String text) {
        Position position = place.step().position().orElseThrow();
        ScoreText score = ScoreText.read(text, place.view().plan().metric(), "trial " + position.number());
        if (Doubt.of(place.view().plan(), place.view().state(), position, score.score()).isPresent()) {
            place.doubt(Optional.of(score));
            place.asks().push(Ask.CONFIRM_SCORE);
            return LogReply.of();
        }
        return record(position, score);
    }

    /** Takes the answer to whether a doubtful score is right; empty where it answers the question before instead, as a corrected score does. */
    Optional<LogReply> confirm(String text) {
        String word = text.toLowerCase(Locale.ROOT);
        if (word.equals("y") || word.equals("yes")) {
            return Optional.of(record(place.step().position().orElseThrow(), place.doubted().orElseThrow()));
        }
        if (text.isEmpty()) {
            return Optional.of(LogReply.of());
        }
        place.asks().poll();
        place.doubt(Optional.empty());
        return word.equals("n") || word.equals("no") ? Optional.of(LogReply.of("Not recorded.")) : Optional.empty();
    }

    private LogReply record(Position position, ScoreText score) {
        double elapsed = place.stepSeconds();
        study.record(position, score.score(), score.loops(), Optional.empty(), place.startedAt(), elapsed, Source.MANUAL);
        Optional<LookPoint> before = lookDue(position.number());
        place.begin();
        List<String> said = ChecklistText.recorded(place.view().plan(), position, score);
        lookDue(0).filter(due -> !Optional.of(due).equals(before)).ifPresent(due -> said.add(ChecklistText.lookDue(due.number(), place.view().plan().looks())));
        return new LogReply(said, false);
    }

    /** The interim look that is due, with the trial at one position counted as still open; 0 for none. The last look is the verdict itself. */
    private Optional<LookPoint> lookDue(int open) {
        if (place.view().plan().looks() == 1) {
            return Optional.empty();
        }
        StudyView view = place.view();
        Set<Integer> settled = view.state().settled();
        return LookSchedule.of(view.plan(), view.sheet()).reached(number -> number != open && settled.contains(number))
                .filter(due -> due.lastPosition() < view.sheet().positions().size());
    }
}
