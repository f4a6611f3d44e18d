package coldproof.face.console;

import coldproof.face.dialogue.MeterLines;
import coldproof.job.LogJob;
import coldproof.plan.Plan;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Progress;
import coldproof.reason.checklist.Question;
import coldproof.report.text.ChecklistText;
import coldproof.report.text.Harmless;
import coldproof.report.text.Wrap;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jline.utils.AttributedString;
import org.jline.utils.AttributedStringBuilder;
import org.jline.utils.AttributedStyle;

/** Draws the screen of one question of the checklist. */
final class LogPicture {
    private static final int ROWS_FOR_BIG = 20;
    private static final int COLUMNS_FOR_BIG = 46;
    private static final int LEAST_BESIDE_BIG = 18;
    private final int rows;
    private final int columns;
    private final boolean styled;
    private final char ink;
    private final List<AttributedString> lines = new ArrayList<>();

    /**
     * A picture of this size.
     *
     * @param styled whether bold and inverse may be used; they never carry meaning alone
     * @param unicode whether the terminal shows block characters
     */
    LogPicture(int rows, int columns, boolean styled, boolean unicode) {
        this.rows = rows;
        this.columns = columns;
        this.styled = styled;
        this.ink = unicode ? '\u2588' : '#';
    }

    /**
     * What stands on the screen.
     *
     * @param lines exactly as many as fit
     * @param cursorRow where the cursor belongs, from 0
     * @param cursorColumn likewise
     */
    record Drawn(List<AttributedString> lines, int cursorRow, int cursorColumn) {}

    /** Draws it: what came of the last answer, and what is being typed. */
    Drawn draw(LogJob log, List<String> said, String typed) {
        Question question = log.question();
        Plan plan = log.view().plan();
        Progress progress = question.progress();
        plain(cut(Harmless.line(plan.title())));
        plain("");
        head(question, progress, soakLeft(log, question));
        bold(bar(progress));
        meters(MeterLines.of(log));
        plain("");
        List<String> body = new ArrayList<>();
        ChecklistText.instructions(question, plan).forEach(line -> wrap(line, body));
        List<String> news = new ArrayList<>();
        said.forEach(line -> wrap(line, news));
        return foot(question, plan, body, news, typed);
    }

    /** Seconds left of the soak, empty string elsewhere. */
    private static String soakLeft(LogJob log, Question question) {
        if (question.ask() != Ask.SOAK) {
            return "";
        }
        long left = Math.round(log.view().plan().budget().soakSeconds() - log.stepSeconds());
        String sign = left < 0 ? "-" : "";
        return sign + String.format(Locale.ROOT, "%d:%02d", Math.abs(left) / 60, Math.abs(left) % 60);
    }

    private void head(Question question, Progress progress, String soakLeft) {
        List<String> words = new ArrayList<>(List.of("TRIAL " + progress.trial() + " of " + progress.trials(),
                "session " + progress.session() + " of " + progress.sessions(), "in it, trial " + progress.inSession() + " of " + progress.ofSession()));
        if (!progress.condition().isEmpty()) {
            words.add(Harmless.line(progress.condition()).toUpperCase(Locale.ROOT));
        }
        if (!soakLeft.isEmpty()) {
            words.add(0, soakLeft.startsWith("-") ? "SETTLED for " + soakLeft.substring(1) : soakLeft.equals("0:00") ? "SETTLED" : "SETTLING: " + soakLeft + " left");
        }
        String big = soakLeft.isEmpty() ? progress.trial() + "/" + progress.trials() : soakLeft;
        boolean room = rows >= ROWS_FOR_BIG && columns >= COLUMNS_FOR_BIG && columns - BigText.columns(big) - 3 >= LEAST_BESIDE_BIG;
        if (room && question.ask() != Ask.FINISHED) {
            beside(BigText.rows(big, ink), BigText.columns(big), words);
        } else {
            StringBuilder text = new StringBuilder();
            Wrap.indented(String.join(", ", words), "", columns, text);
            text.toString().lines().forEach(this::bold);
        }
    }

    private void beside(List<String> big, int bigColumns, List<String> words) {
        int room = columns - bigColumns - 3;
        List<String> right = new ArrayList<>();
        for (String word : words) {
            StringBuilder text = new StringBuilder();
            Wrap.indented(word, "", room, text);
            text.toString().lines().forEach(right::add);
        }
        for (int i = 0; i < Math.max(BigText.ROWS, right.size()); i++) {
            String left = i < big.size() ? big.get(i) : " ".repeat(bigColumns);
            bold(cut(left + "   " + (i < right.size() ? right.get(i) : "")));
        }
        plain("");
    }

    private String bar(Progress progress) {
        String words = " " + ChecklistText.done(progress);
        int room = Math.min(40, columns - words.length() - 2);
        if (room < 8) {
            return cut(words.strip());
        }
        int settled = progress.trials() == 0 ? 0 : (int) Math.round((double) room * (progress.trials() - progress.open()) / progress.trials());
        return "[" + "=".repeat(settled) + ".".repeat(room - settled) + "]" + words;
    }

    private void meters(List<String> meters) {
        for (String meter : meters) {
            StringBuilder text = new StringBuilder();
            Wrap.indented(meter, "", columns, text);
            boolean loud = meter.matches(".*[A-Z]{4}.*");
            text.toString().lines().forEach(line -> add(line, loud ? AttributedStyle.INVERSE : AttributedStyle.DEFAULT));
        }
    }

    /** The rest: news and instructions as far as they fit, then the prompt and the keys on the last lines. */
    private Drawn foot(Question question, Plan plan, List<String> body, List<String> news, String typed) {
        List<String> keys = new ArrayList<>();
        wrap(ChecklistText.keys(question), keys);
        if (ChecklistText.keys(question).isEmpty()) {
            keys.clear();
        }
        int room = Math.max(1, rows - 1 - keys.size());
        int newsRoom = Math.max(0, Math.min(news.size(), room - lines.size() - Math.min(body.size(), 3) - 1));
        int bodyRoom = Math.max(0, Math.min(body.size(), room - lines.size() - newsRoom - 1));
        body.subList(0, bodyRoom).forEach(this::plain);
        while (lines.size() < room - newsRoom) {
            plain("");
        }
        news.subList(0, newsRoom).forEach(this::plain);
        while (lines.size() > room) {
            lines.remove(lines.size() - 1);
        }
        String prompt = ChecklistText.prompt(question, plan) + "> ";
        String tail = tail(typed, Math.max(8, columns - prompt.length() - 1));
        String shownPrompt = prompt.length() + tail.length() < columns ? prompt : "> ";
        String line = shownPrompt + tail;
        int cursorRow = lines.size();
        bold(cut(line));
        keys.forEach(this::plain);
        while (lines.size() > rows) {
            lines.remove(lines.size() - 1);
        }
        return new Drawn(lines, Math.min(cursorRow, rows - 1), Math.min(columns - 1, new AttributedString(line).columnLength()));
    }

    private static String tail(String typed, int room) {
        String shown = Harmless.line(typed);
        return shown.length() <= room ? shown : shown.substring(shown.length() - room);
    }

    private void wrap(String sentence, List<String> into) {
        StringBuilder text = new StringBuilder();
        Wrap.indented(sentence, "", columns, text);
        text.toString().lines().forEach(into::add);
    }

    private String cut(String line) {
        return new AttributedString(line).columnSubSequence(0, columns).toString();
    }

    private void plain(String line) {
        add(line, AttributedStyle.DEFAULT);
    }

    private void bold(String line) {
        add(line, AttributedStyle.BOLD);
    }

    private void add(String line, AttributedStyle style) {
        lines.add(new AttributedStringBuilder().style(styled ? style : AttributedStyle.DEFAULT).append(cut(line)).toAttributedString());
    }
}
