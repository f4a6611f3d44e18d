package coldproof.machine.sensors;

import java.util.List;

/** A library of system information that answers as it is told, or throws. */
final class FakeLibrary implements SystemLibrary {
    double die = Double.NaN;
    int[] fans = {};
    long[] clocks = {};
    long[] ticks = new long[8];
    List<Battery> batteries = List.of();
    RuntimeException thrown;

    private void perhapsThrow() {
        if (thrown != null) {
            throw thrown;
        }
    }

    @Override
    public double dieCelsius() {
        perhapsThrow();
        return die;
    }

    @Override
    public int[] fanRpm() {
        perhapsThrow();
        return fans.clone();
    }

    @Override
    public long[] clockHertz() {
        perhapsThrow();
        return clocks.clone();
    }

    @Override
    public long[] loadTicks() {
        perhapsThrow();
        return ticks.clone();
    }

    @Override
    public List<Battery> batteries() {
        perhapsThrow();
        return batteries;
    }

    /** A battery of a laptop away from the wall: 12 W are drawn, its cells are at 24.5 °C. */
    static Battery discharging(double share) {
        return new Battery("Pack", share, -12_000, false, 24.5, 4400, false, false, true);
    }

    /** The same on the wall. */
    static Battery charging(double share) {
        return new Battery("Pack", share, 31_000, false, 24.5, 4400, true, true, false);
    }

    /** What some systems show where there is no battery: one that is full of nothing. */
    static Battery absent() {
        return new Battery("System Battery", 1, 0, true, 0, 1, false, false, false);
    }
}
