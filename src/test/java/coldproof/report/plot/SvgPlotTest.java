package coldproof.report.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.report.markup.Markup;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class SvgPlotTest {
    private static Element drawn(Plot plot) throws Exception {
        Markup out = new Markup();
        SvgPlot.draw(plot, "p", out);
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(out.document()))).getDocumentElement();
    }

    private static Plot plot(Axis x, Axis y, Mark... marks) {
        return new Plot("a title", "what it shows", x, y, List.of(marks), List.of(), 300);
    }

    private static List<Element> all(Element root, String name) {
        NodeList nodes = root.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    /** SVG 2, section 5.7: title and desc are the alternative for those who cannot see; the names are tied by aria-labelledby. */
    @Test
    void itSaysInWordsWhatItShows() throws Exception {
        Element svg = drawn(plot(Axis.between("x", 0, 1), Axis.between("y", 0, 1)));
        assertEquals("a title", all(svg, "title").get(0).getTextContent());
        assertEquals("what it shows", all(svg, "desc").get(0).getTextContent());
        assertEquals("p-title p-words", svg.getAttribute("aria-labelledby"));
        assertEquals("img", svg.getAttribute("role"));
    }

    /** The place of a point follows from the frame: the tick labels give the same scale. */
    @Test
    void aPointLiesWhereTheAxesSay() throws Exception {
        Mark point = new Mark.Points(List.of(new Mark.Place(2, 30)), Ink.RUST, Shape.SQUARE);
        Element svg = drawn(plot(Axis.between("x", 0, 4), Axis.between("y", 0, 60), point));
        double[] box = box(all(svg, "path").stream().filter(path -> path.getAttribute("class").startsWith("dot")).findFirst().orElseThrow().getAttribute("d"));
        double frameLeft = middleOf(svg, "1.0");
        double frameRight = middleOf(svg, "3.0");
        assertEquals((frameLeft + frameRight) / 2, (box[0] + box[2]) / 2, 0.11); // coordinates are rounded to a tenth
        assertEquals((baselineOf(svg, "0") + baselineOf(svg, "60")) / 2 - 4.5, (box[1] + box[3]) / 2, 0.11);
    }

    private static double middleOf(Element svg, String label) {
        return number(svg, label, "middle", "x");
    }

    private static double baselineOf(Element svg, String label) {
        return number(svg, label, "end", "y");
    }

    private static double number(Element svg, String label, String place, String attribute) {
        return all(svg, "text").stream().filter(text -> text.getTextContent().equals(label) && text.getAttribute("class").equals(place))
                .mapToDouble(text -> Double.parseDouble(text.getAttribute(attribute))).findFirst().orElseThrow();
    }

    /** Smallest and largest coordinates of a path of M, L with absolute numbers. */
    private static double[] box(String path) {
        Matcher numbers = Pattern.compile("-?\\d+(\\.\\d+)?").matcher(path);
        List<Double> found = new ArrayList<>();
        while (numbers.find()) {
            found.add(Double.parseDouble(numbers.group()));
        }
        double[] x = IntStream.range(0, found.size()).filter(i -> i % 2 == 0).mapToDouble(found::get).toArray();
        double[] y = IntStream.range(0, found.size()).filter(i -> i % 2 == 1).mapToDouble(found::get).toArray();
        return new double[] {DoubleStream.of(x).min().orElseThrow(), DoubleStream.of(y).min().orElseThrow(), DoubleStream.of(x).max().orElseThrow(),
            DoubleStream.of(y).max().orElseThrow()};
    }

    /** An interval without an end runs to the edge instead of off the page. */
    @Test
    void anUnboundedIntervalEndsAtTheFrame() throws Exception {
        Mark reach = new Mark.Reach(0.5, Double.NEGATIVE_INFINITY, 0.2, Double.POSITIVE_INFINITY, Mark.Along.X, Ink.RUST, Mark.Weight.FINE);
        Element svg = drawn(plot(Axis.between("x", 0, 1), Axis.between("y", 0, 1), reach));
        assertTrue(all(svg, "path").stream().noneMatch(path -> path.getAttribute("d").contains("Infinity") || path.getAttribute("d").contains("NaN")));
    }

    @Test
    void aLineBreaksWhereANumberIsMissing() throws Exception {
        Mark line = new Mark.Line(List.of(new Mark.Place(0, 0), new Mark.Place(1, 1), new Mark.Place(2, Double.NaN), new Mark.Place(3, 1)), Ink.PLUM, Mark.Stroke.PLAIN);
        Element svg = drawn(plot(Axis.between("x", 0, 3), Axis.between("y", 0, 1), line));
        String path = all(svg, "path").stream().filter(one -> one.getAttribute("class").contains("s-c")).findFirst().orElseThrow().getAttribute("d");
        assertEquals(2, path.chars().filter(c -> c == 'M').count(), path);
        assertEquals(1, path.chars().filter(c -> c == 'L').count(), path);
    }

    /** Long labels side by side: some are left out rather than written over each other. */
    @Test
    void labelsDoNotRunIntoEachOther() throws Exception {
        List<String> names = IntStream.range(0, 40).mapToObj(i -> "a rather long name " + i).toList();
        Element svg = drawn(plot(Axis.places("x", names, 40), Axis.between("y", 0, 1)));
        List<Element> labels = all(svg, "text").stream().filter(text -> text.getTextContent().startsWith("a rather")).toList();
        for (int i = 1; i < labels.size(); i++) {
            double gap = Double.parseDouble(labels.get(i).getAttribute("x")) - Double.parseDouble(labels.get(i - 1).getAttribute("x"));
            assertTrue(gap > 6.5 * labels.get(i).getTextContent().length(), labels.get(i).getTextContent() + " " + gap + " apart");
        }
    }

    @Test
    void aTitleTooLongIsCutAndSaysSo() throws Exception {
        Element svg = drawn(plot(Axis.between("x".repeat(500), 0, 1), Axis.between("y".repeat(500), 0, 1)));
        assertTrue(all(svg, "text").stream().allMatch(text -> text.getTextContent().length() < 60));
        assertEquals(2, all(svg, "text").stream().filter(text -> text.getTextContent().endsWith("\u2026")).count());
    }
}
