package coldproof.files.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Refused;
import coldproof.reason.rehearse.bench.BenchFact;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.BenchSketch;
import coldproof.reason.rehearse.bench.InventedDevices;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BenchReaderTest {
    private static final String HEAD = "coldproof bench: 1\nname: bench two\nlike: shelf desktop\n";

    @Test
    void whatIsNotWrittenIsLentByTheDeviceItIsLike() {
        assertEquals(InventedDevices.shelfDesktop().limits(), BenchReader.read("b", HEAD).parameters().limits());
        assertEquals("bench two", BenchReader.read("b", HEAD).parameters().name());
    }

    @Test
    void whatIsWrittenHolds() {
        BenchParameters bench = BenchReader.read("b", HEAD + "power limit: 48,5 W\nboost power: none\nhighest clock: 4.1 GHz\nthermal resistance: 1.25 K/W\n"
                + "temperature limit: 194 °F\nbattery energy: 60 Wh\n").parameters();
        assertEquals(48.5, bench.limits().longTermWatts());
        assertEquals(Double.POSITIVE_INFINITY, bench.limits().shortTermWatts());
        assertEquals(4100, bench.silicon().highestMegahertz(), 1e-9);
        assertEquals(90, bench.limits().temperatureCelsius(), 1e-9);
        assertEquals(60, bench.supply().batteryWattHours());
        assertEquals(1.25, bench.heat().resistanceKelvinsPerWatt(bench.fan().automaticShare(), 21), 1e-12);
    }

    @Test
    void writingAndReadingGoInARound() {
        BenchSketch sketch = BenchReader.read("b", HEAD + "power limit: 48.5 W\nclock limit: none\nlowest clock: 700 MHz\ntime constant: 77 s\nwork: 5 min\n");
        assertEquals(sketch, BenchReader.read("b", BenchWriter.text(sketch, "a remark")));
        assertEquals(300, sketch.facts().get(BenchFact.WORK));
    }

    @ParameterizedTest
    @CsvSource({"power limit: 48, unit", "power limit: 0 W, out of range", "power limt: 48 W, unknown key", "lowest clock: 9 GHz, no device can be made",
        "temperature limit: none, none", "like: shelf, stands twice"})
    void mistakesAreNamedAtTheirPlace(String line, String said) {
        Refused refused = assertThrows(Refused.class, () -> BenchReader.read("bench.yaml", HEAD + line + "\n"));
        String all = refused.problems().toString();
        assertTrue(all.contains("bench.yaml"), all);
        assertTrue(all.contains(said) || said.equals("unit") && all.contains("W") || said.equals("stands twice") && all.contains("like"), all);
    }
}
