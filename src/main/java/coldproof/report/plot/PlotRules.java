package coldproof.report.plot;

import java.util.Locale;
import java.util.function.ToIntFunction;

/** The rules of appearance that drawings rely on. */
public final class PlotRules {
    private static final String FORMS = """
            .plot{display:block;width:100%;height:auto;overflow:hidden;font:13px system-ui,sans-serif}
            .plot text{fill:var(--ink)}.plot .end{text-anchor:end}.plot .middle{text-anchor:middle}
            .plot .apart{unicode-bidi:isolate}
            .plot .frame{fill:none;stroke:var(--ink);stroke-width:1.2}.plot .grid{fill:none;stroke:var(--line);stroke-width:1}
            .plot .line{fill:none;stroke-linejoin:round;stroke-width:1.8}.plot .fine{stroke-width:.9;opacity:.75}.plot .bold{stroke-width:3.2}
            .plot .dashed{stroke-dasharray:7 4}.plot .dashed_dotted{stroke-dasharray:9 3 2 3}
            .plot .dotted{stroke-dasharray:1.6 4;stroke-linecap:round;stroke-width:2.2}
            .plot .open{fill:none;stroke-width:1.6}.plot .dot{stroke:var(--paper);stroke-width:.8}.plot .band{opacity:.16}
            """;

    private PlotRules() {}

    /** Forms and the inks as variables; the page sets {@code --ink}, {@code --paper} and {@code --line}. */
    public static String forms() {
        StringBuilder rules = new StringBuilder(FORMS);
        for (Ink ink : Ink.values()) {
            rules.append(String.format(Locale.ROOT, ".plot .f-%1$s{fill:var(--i-%1$s)}.plot .s-%1$s{stroke:var(--i-%1$s)}%n", ink.code()));
        }
        return rules.toString().replace("\r\n", "\n");
    }

    /** The inks for light ground, as declarations of variables. */
    public static String light() {
        return inks(Ink::light);
    }

    /** The inks for dark ground. */
    public static String dark() {
        return inks(Ink::dark);
    }

    private static String inks(ToIntFunction<Ink> colour) {
        StringBuilder rules = new StringBuilder();
        for (Ink ink : Ink.values()) {
            rules.append(String.format(Locale.ROOT, "--i-%s:#%06x;", ink.code(), colour.applyAsInt(ink)));
        }
        return rules.toString();
    }
}
