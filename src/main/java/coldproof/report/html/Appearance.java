package coldproof.report.html;

import coldproof.report.plot.PlotRules;
import java.util.Locale;
import java.util.Map;

/** How a page looks: its colours by name, on light and on dark ground, and its rules. */
final class Appearance {
    /** Colours on light ground, {@code 0xRRGGBB}. */
    static final Map<String, Integer> LIGHT = Map.of("paper", 0xfcfcfa, "ink", 0x1b2024, "soft", 0x4c565e, "line", 0xd3d9dd, "panel", 0xf0f3f2, "accent", 0x1f4e9e,
            "alarm", 0x8f1d0f, "alarmpaper", 0xfdeeea);
    /** Colours on dark ground. */
    static final Map<String, Integer> DARK = Map.of("paper", 0x14181b, "ink", 0xe8ecee, "soft", 0xb2bdc4, "line", 0x39434a, "panel", 0x1e2429, "accent", 0x9cc2ff,
            "alarm", 0xffb4a3, "alarmpaper", 0x3a1912);

    private static final String RULES = """
            *{box-sizing:border-box}
            html{background:var(--paper);color:var(--ink);font:16px/1.5 system-ui,sans-serif;-webkit-text-size-adjust:100%}
            body{margin:0 auto;max-width:68rem;padding:1rem;overflow-wrap:anywhere}
            h1{font-size:1.7rem;line-height:1.2;margin:.4rem 0}h2{font-size:1.25rem;margin:2.2rem 0 .6rem;border-bottom:2px solid var(--line);padding-bottom:.2rem}
            h3{font-size:1.1rem;margin:0 0 .3rem}p{max-width:46rem;margin:.6rem 0}.under{color:var(--soft);margin:0 0 1rem}
            nav ul{display:flex;flex-wrap:wrap;gap:.2rem 1rem;padding:0;margin:.8rem 0;list-style:none}a{color:var(--accent)}
            .answer{border-left:.5rem solid var(--accent);background:var(--panel);padding:.8rem 1rem;margin:1rem 0}
            .answer .word{font-size:1.5rem;font-weight:700;letter-spacing:.03em;margin:0}.answer .said{font-size:1.1rem;margin:.3rem 0}.answer .small{color:var(--soft);margin:.3rem 0}
            .notice{border:3px solid var(--alarm);background:var(--alarmpaper);padding:.7rem 1rem;margin:1rem 0}
            .notice strong{color:var(--alarm);display:block;font-size:1.35rem;letter-spacing:.05em}
            dl{display:grid;grid-template-columns:minmax(7rem,max-content) 1fr;gap:.25rem 1rem;margin:.8rem 0}dt{color:var(--soft)}dd{margin:0}
            .wide{overflow-x:auto;max-width:100%}table{border-collapse:collapse;margin:.2rem 0 1rem;font-size:.92rem}
            .caption{color:var(--soft);margin:1rem 0 0;break-after:avoid}th,td{padding:.25rem .7rem .25rem 0;text-align:left;vertical-align:top;border-bottom:1px solid var(--line);overflow-wrap:normal}
            th{font-weight:600}td.number,th.number{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
            td,th,dd,li,.caption,.said{unicode-bidi:isolate}td{max-width:28rem;overflow-wrap:break-word}td.long{overflow-wrap:anywhere;min-width:9rem}
            pre{background:var(--panel);padding:.8rem;overflow-x:auto;font:.85rem/1.45 ui-monospace,monospace;white-space:pre-wrap}
            .figures{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,26rem),1fr));gap:1.5rem}
            figure{margin:0;min-width:0;max-width:38rem}figcaption{margin:0 0 .3rem}figcaption b{display:block}figure .words{color:var(--soft);font-size:.9rem;margin:.2rem 0}
            .keys{list-style:none;padding:0;margin:.3rem 0;font-size:.9rem}.keys li{display:flex;gap:.5rem;align-items:center}.keys svg{flex:none;width:34px;height:18px}
            """;

    private static final String PRINT = """
            html{font-size:10.5pt;background:#fff}body{max-width:none;padding:0}nav{display:none}h2{break-after:avoid}figure,.answer,.notice,tr{break-inside:avoid}
            .figures{grid-template-columns:1fr 1fr}.wide{overflow:visible}pre{overflow:visible}thead{display:table-header-group}
            .answer,.notice,.plot,pre{print-color-adjust:exact;-webkit-print-color-adjust:exact}
            """;

    private Appearance() {}

    /** All rules, for the head of the page. */
    static String rules() {
        String light = "color-scheme:light;" + colours(LIGHT) + PlotRules.light();
        String dark = "color-scheme:dark;" + colours(DARK) + PlotRules.dark();
        return ":root{" + light + "}\n@media screen and (prefers-color-scheme:dark){:root{" + dark + "}}\n" + RULES + PlotRules.forms() + "@page{margin:14mm}\n@media print{" + PRINT
                + "}\n";
    }

    private static String colours(Map<String, Integer> colours) {
        StringBuilder rules = new StringBuilder();
        colours.entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(colour -> rules.append(String.format(Locale.ROOT, "--%s:#%06x;", colour.getKey(), colour.getValue())));
        return rules.toString();
    }
}
