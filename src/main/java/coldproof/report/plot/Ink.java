package coldproof.report.plot;

/**
 * The colours of a plot, told apart by people who see colours differently, on light and on dark ground; nothing depends on colour alone.
 * Each has a colour for light and one for dark ground, sRGB.
 */
public enum Ink {
    /** The baseline. */
    DEEP_BLUE("a", 0x1f4e9e, 0x86b4ff),
    /** The changed level. */
    RUST("b", 0xc4540a, 0xff9a4d),
    /** A third level. */
    PLUM("c", 0xb57dad, 0x916a8b),
    /** A fourth level. */
    MOSS("d", 0x373a16, 0xe5e8c2),
    /** What is neither: rules, trends, frames. */
    GREY("g", 0x5c6670, 0xa9b4bf);

    private final String code;
    private final int light;
    private final int dark;

    Ink(String code, int light, int dark) {
        this.code = code;
        this.light = light;
        this.dark = dark;
    }

    /** Letter in the names of its rules of appearance. */
    public String code() {
        return code;
    }

    /** Colour on light ground, {@code 0xRRGGBB}. */
    public int light() {
        return light;
    }

    /** Colour on dark ground, {@code 0xRRGGBB}. */
    public int dark() {
        return dark;
    }

    /** The ink of the n-th level, first is 0; after the fourth they begin again, with the other shapes. */
    public static Ink ofLevel(int n) {
        return values()[n % 4];
    }
}
