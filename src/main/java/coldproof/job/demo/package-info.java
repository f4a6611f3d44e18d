/**
 * The demonstration: a whole study in an invented scenario, run on the simulated bench in simulated time and marked so everywhere. Enter at
 * {@link coldproof.job.demo.DemoJob#make}. Uses the same jobs as a real study; only the bench and the clock are simulated.
 */
package coldproof.job.demo;
