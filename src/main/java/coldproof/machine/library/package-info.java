/**
 * The general-purpose library of system information, behind {@link coldproof.machine.sensors.SystemLibrary}: the only room that knows it.
 * Its class is not on the program's class path together with the library; {@code coldproof.machine.sensors} loads both when a sensor is
 * wanted, so that no other verb opens a jar of it. May use {@code machine.sensors} and the library.
 */
package coldproof.machine.library;
