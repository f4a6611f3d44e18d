package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.nio.file.Path;

/** Share of the time all processors were busy since the last reading, from the first line of /proc/stat; waiting for a drive counts as idle. */
final class Utilisation implements Sensor {
    private static final int FIELDS = 9; // "cpu", user, nice, system, idle, iowait, irq, softirq, steal; guest time is in user already

    private final Path file;
    private final LoadShare share = new LoadShare();

    Utilisation(Path file) {
        this.file = file;
    }

    @Override
    public String heading() {
        return "utilisation [%]";
    }

    @Override
    public Channel channel() {
        return Channel.UTILISATION;
    }

    @Override
    public double read(double seconds) {
        String text = KernelFile.text(file);
        int end = text.indexOf('\n');
        String[] fields = (end < 0 ? text : text.substring(0, end)).split("\\s+");
        if (fields.length <= 1 + LoadShare.WAITS || !fields[0].equals("cpu")) {
            return Double.NaN;
        }
        long all = 0;
        long idle = 0;
        for (int i = 1; i < Math.min(FIELDS, fields.length); i++) {
            long ticks = Long.parseLong(fields[i]);
            all += ticks;
            idle += i == 1 + LoadShare.IDLE || i == 1 + LoadShare.WAITS ? ticks : 0;
        }
        return share.between(new long[] {all - idle, all});
    }
}
