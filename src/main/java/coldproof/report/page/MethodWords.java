package coldproof.report.page;

import coldproof.plan.Claim;
import coldproof.plan.Metric;
import coldproof.plan.Plan;
import coldproof.reason.verdict.Verdict;
import coldproof.report.text.Figures;
import java.util.ArrayList;
import java.util.List;

/** How the answer was found, for a reader who does not do statistics. */
final class MethodWords {
    private MethodWords() {}

    static List<String> of(StudyContent content) {
        Plan plan = content.plan();
        List<String> words = new ArrayList<>();
        words.add("Changes are ratios, so all sums are done on the logarithm of the " + plan.metric().name() + ": a gain and the loss that undoes it have the same size, "
                + "and doubling every score changes nothing." + direction(plan.metric()));
        content.answers().stream().findFirst().ifPresent(one -> {
            words.add(stratum(one.verdict(), plan.compare().factor()));
            words.add("Here that was done by: " + one.verdict().method() + ".");
            one.verdict().randomisation().ifPresent(test -> words.add("A second opinion needs no assumption about how scores scatter: the run order was drawn by lot, so "
                    + (test.exact() ? "every order that could have been drawn" : "a large sample of the orders that could have been drawn")
                    + " was gone through, and it was counted how often the labels alone give a change as large as the one found."));
        });
        words.add(rule(plan));
        words.add("An interval at 95 % comes from a procedure that catches the true change in 95 of 100 studies like this one; it says nothing about studies run another way. "
                + "Repeats inside a trial and rows of a trace never count as trials. No trial was dropped for its score; checks warn and leave the data alone.");
        return words;
    }

    private static String direction(Metric metric) {
        return switch (metric.better()) {
            case HIGHER -> " More is better.";
            case LOWER -> " Less is better, and the change is given as the gain in speed that it amounts to; the change of the metric itself stands beside it.";
        };
    }

    private static String stratum(Verdict verdict, String factor) {
        return switch (verdict.stratum()) {
            case BETWEEN_SESSIONS -> "The " + factor + " was set once for a whole session, so a session counts as one: its trials are averaged, and the change is held against "
                    + "how much sessions under the same setting differ. More trials in a session make its average sharper; they do not make more sessions.";
            case WITHIN_SESSIONS -> "The " + factor + " was set anew for each trial, so levels are compared inside each session and held against the spread of trials there; "
                    + "whatever differs from one session to the next drops out.";
            case PAIRS -> "Trials were run two by two, so each pair gives one difference, and the average difference is held against how much the differences scatter; "
                    + "whatever both trials of a pair share drops out.";
            case TRIALS -> "Trials stand on their own, so the averages of the levels are compared and held against the spread of trials under the same setting.";
        };
    }

    private static String rule(Plan plan) {
        String matters = Figures.given(plan.mattersPercent());
        String falseAlarm = Figures.given(100 * plan.errors().falseAlarm());
        String start = "The rule was: a change that is none is called a change in at most " + falseAlarm + " of studies, and a change of " + matters + " is what matters. ";
        return start + (plan.claim() == Claim.GAIN
                ? "The claim of a gain passes when the whole interval lies above zero and reaches beyond " + matters + "; it fails when the gain is shown to be smaller, when there is "
                        + "no change that matters, or when things got worse; everything else is undecided."
                : "The claim of sameness passes when a change of " + matters + " or more, either way, is ruled out; it fails when the change is shown to be larger; everything else is "
                        + "undecided.");
    }
}
