package coldproof.report.text;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.ledger.Ledger;
import coldproof.reason.ledger.LedgerDevice;
import coldproof.reason.ledger.LedgerRow;
import coldproof.reason.ledger.LedgerTable;
import coldproof.reason.ledger.Restraint;
import coldproof.reason.ledger.Standing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a ledger says, in sentences and cells that the screen and the page share. Names are as in the file: whoever shows them makes them harmless. */
public final class LedgerWords {
    private LedgerWords() {}

    /** What a table compares. */
    public static String heading(Ledger ledger, LedgerTable table) {
        boolean speed = table.kind() == LedgerTable.Kind.SPEED;
        String what = table.workload().map(workload -> workload.name() + (!speed || workload.unit().isEmpty() ? "" : ", " + workload.unit())
                + (speed ? " (" + workload.better().word() + " is better)" : "")).orElse("All workloads (geometric mean of the ratios)");
        return switch (table.kind()) {
            case SPEED -> what;
            case PER_WATT -> what + ", speed per watt";
            case PER_MONEY -> what + ", speed for the money (" + ledger.sheet().currency() + ")";
        };
    }

    /** An interval in percent. */
    public static String interval(Interval interval) {
        return Figures.change(LogRatio.toPercent(interval.low())).replace(" %", "") + " to " + Figures.change(LogRatio.toPercent(interval.high()));
    }

    /** The ranks that the data allow: {@code 2} or {@code 2-4}. */
    public static String rank(LedgerRow row) {
        int best = row.bestRank().orElse(0);
        int worst = row.worstRank().orElse(0);
        return best == worst ? Integer.toString(best) : best + "-" + worst;
    }

    /** The sign of a difference that cannot be told. */
    public static String sign(Standing standing) {
        return switch (standing.told()) {
            case CANNOT_TELL -> "~";
            case NOT_STATED -> "?";
            case FASTER, SLOWER, REFERENCE -> "";
        };
    }

    /** What the signs and columns mean. */
    public static String signs(Ledger ledger) {
        return "~ cannot be told from noise. ? the source does not say how sure it is. u: standard uncertainty of the value, percent of it. rank: the ranks the data "
                + "allow; all of a table hold together with " + Figures.given(100 * ledger.sheet().level()) + ".";
    }

    private static Optional<LedgerTable> headlineTable(Ledger ledger) {
        return ledger.tables().stream().filter(table -> table.kind() == LedgerTable.Kind.SPEED).reduce((first, last) -> last);
    }

    /** Heading of {@link #standings}. */
    public static String headline(Ledger ledger) {
        return "In words, " + headlineTable(ledger).flatMap(LedgerTable::workload).map(workload -> workload.name()).orElse("over all workloads");
    }

    /** Both directions once, because "25 % faster" and "20 % slower" are the same finding; over all workloads, or of the only one. */
    public static List<String> standings(Ledger ledger) {
        List<String> said = new ArrayList<>();
        headlineTable(ledger).ifPresent(table -> table.rows().forEach(row -> said.add(standing(row, ledger.sheet().reference()))));
        said.removeIf(String::isEmpty);
        return said;
    }

    private static String standing(LedgerRow row, String reference) {
        Standing standing = row.standing();
        String one = Figures.percent(Math.abs(standing.percentAgainstReference()));
        String other = Figures.percent(Math.abs(standing.percentOfReferenceAgainstIt()));
        return switch (standing.told()) {
            case FASTER -> row.device() + " is " + one + " faster than " + reference + ", which is " + other + " slower than it.";
            case SLOWER -> row.device() + " is " + one + " slower than " + reference + ", which is " + other + " faster than it.";
            case CANNOT_TELL -> row.device() + " cannot be told from " + reference + ".";
            case NOT_STATED -> row.device() + ": not known, a source does not say how sure it is.";
            case REFERENCE -> "";
        };
    }

    /** Constrained beside unconstrained units of the same silicon. */
    public static List<String> restraints(Ledger ledger) {
        return ledger.restraints().stream().map(LedgerWords::restraint).toList();
    }

    private static String restraint(Restraint restraint) {
        Standing standing = restraint.standing();
        String range = standing.interval().map(interval -> " (" + Figures.share(Math.exp(interval.low())) + " to " + Figures.share(Math.exp(interval.high())) + ")").orElse("");
        String verdict = switch (standing.told()) {
            case SLOWER, FASTER -> " That is " + Figures.change(standing.percentAgainstReference()) + " against the free one; the free one is "
                    + Figures.change(standing.percentOfReferenceAgainstIt()) + " against it.";
            case CANNOT_TELL -> " The two cannot be told apart.";
            case NOT_STATED -> " How sure that is, a source does not say.";
            case REFERENCE -> "";
        };
        return restraint.constrained() + " (" + restraint.constraint() + ") reaches " + Figures.share(Math.exp(standing.logSpeedRatio())) + range + " of "
                + restraint.unconstrained() + ", both " + restraint.silicon() + ", over " + restraint.workloads() + (restraint.workloads() == 1 ? " workload." : " workloads.")
                + verdict;
    }

    /** Where every figure comes from. */
    public static List<String> sources(Ledger ledger) {
        List<String> said = new ArrayList<>();
        for (LedgerDevice device : ledger.sheet().devices()) {
            device.figures().forEach((workload, figure) -> said.add(device.name() + ", " + workload + ": " + figure.source()
                    + (figure.date().isEmpty() ? "" : ", " + figure.date())
                    + (figure.repeats().isEmpty() ? "" : ", " + figure.repeats().getAsInt() + (figure.repeats().getAsInt() == 1 ? " result" : " results"))));
        }
        return said;
    }
}
