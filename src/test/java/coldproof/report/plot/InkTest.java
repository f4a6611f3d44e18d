package coldproof.report.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Map;
import java.util.function.ToIntFunction;
import org.junit.jupiter.api.Test;

class InkTest {
    private static final double CLEARLY_APART = 25; // CIE 1976 units; 2.3 is a just noticeable difference (Mahy et al. 1994, from memory)

    /**
     * Eyes that lack one kind of cone, on linear sRGB.
     *
     * @see "G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, A physiologically-based model for simulation of color vision deficiency, IEEE
     *     TVCG 15 (2009), table of severity 1.0 (from memory)"
     */
    private static final Map<String, double[][]> EYES = Map.of(
            "usual", new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
            "without long-wave cones", new double[][] {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
            "without middle-wave cones", new double[][] {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
            "without short-wave cones", new double[][] {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}});

    /** WCAG 2.2: white on black has the largest contrast, 21; W3C's example of #777777 on white just fails with 4.48. */
    @Test
    void contrastIsThatOfTheGuidelines() {
        assertEquals(21, Colour.contrast(0x000000, 0xffffff), 1e-9);
        assertEquals(4.48, Colour.contrast(0x777777, 0xffffff), 0.005);
    }

    /** WCAG 2.2, success criterion 1.4.11: what is needed to read a graphic has a contrast of 3 or more. */
    @Test
    void everyInkStandsOutFromItsGround() {
        for (Ink ink : Ink.values()) {
            assertTrue(Colour.contrast(ink.light(), 0xfcfcfa) >= 3, ink + " on light ground");
            assertTrue(Colour.contrast(ink.dark(), 0x14181b) >= 3, ink + " on dark ground");
        }
    }

    @Test
    void levelsAreToldApartByEveryKindOfEye() {
        EYES.forEach((name, eye) -> {
            apart(name + ", light", Ink::light, eye);
            apart(name + ", dark", Ink::dark, eye);
        });
    }

    private static void apart(String name, ToIntFunction<Ink> colour, double[][] eye) {
        for (Ink one : EnumSet.range(Ink.DEEP_BLUE, Ink.MOSS)) {
            for (Ink other : EnumSet.range(one, Ink.MOSS)) {
                double difference = Colour.difference(colour.applyAsInt(one), colour.applyAsInt(other), eye);
                assertTrue(one == other || difference >= CLEARLY_APART, one + " and " + other + " for an eye " + name + " differ by " + difference);
            }
        }
    }

    @Test
    void shapesTellLevelsApartToo() {
        for (int level = 1; level < 6; level++) {
            assertTrue(Shape.ofLevel(0) != Shape.ofLevel(level));
        }
    }
}
