/**
 * One use case a verb, for both faces alike; the only place that wires rooms together, starts threads and opens files. Knows no face, no
 * option and no key. Enter at the class named after the verb.
 */
package coldproof.job;
