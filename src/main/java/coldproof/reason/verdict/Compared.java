package coldproof.reason.verdict;

import java.util.OptionalDouble;

/**
 * One of several changes judged together.
 *
 * @param question what was asked
 * @param verdict the answer; its intervals hold for all changes at once
 * @param adjustedP p value adjusted for all changes, where there is a test
 * @param adjustment by what, in words
 */
public record Compared(Question question, Verdict verdict, OptionalDouble adjustedP, String adjustment) {}
