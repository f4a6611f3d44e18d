package coldproof.study;

/** Where a score came from. */
public enum Source {
    /** Typed in by the person. */
    MANUAL,
    /** Taken from a workload that coldproof ran. */
    RECORDED,
    /** Read from a table made elsewhere. */
    IMPORTED,
    /** Invented by a simulation. */
    SIMULATED
}
