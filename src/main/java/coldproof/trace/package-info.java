/**
 * What was measured while a trial ran. A {@link coldproof.trace.TraceAccumulator} takes the rows of a log in the order they come, whatever
 * they were read from, and gives a {@link coldproof.trace.Series}; {@link coldproof.trace.TraceSummaries#summarise} finds the work, its
 * phases and the sustained levels. {@link coldproof.trace.ChannelGuess} tells which column is which. Pure; may use {@code quantity} and
 * {@code stats}; never asks for a file.
 */
package coldproof.trace;
