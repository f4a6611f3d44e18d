package coldproof.machine.sensors;

/** The way to the library of system information, gone through only when a sensor is wanted that the kernel's files do not give. */
@FunctionalInterface
interface LibraryDoor {
    /**
     * Opens it.
     *
     * @throws LibraryUnavailable if it cannot be loaded here
     */
    SystemLibrary open() throws LibraryUnavailable;
}
