package coldproof.job;

/**
 * What the telemetry of a recorded trial came to.
 *
 * @param file the log, relative to the study
 * @param rows rows written
 * @param sensors columns beside the time
 * @param costPercent share of the trial's time that was spent reading and writing, in % of one processor at most
 */
public record RecordedTelemetry(String file, int rows, int sensors, double costPercent) {}
