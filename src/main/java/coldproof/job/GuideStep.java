package coldproof.job;

import java.util.Optional;

/** The questions of a guided plan, in the order they are asked. */
public enum GuideStep {
    /** What is changed. */
    FACTOR("What do you change? One word, such as ambient, fan, paste or power source.", "what is changed", "ambient"),
    /** How it is now. */
    BASELINE("How is it now? A name, and what is set after a sign: room = 21 °C. This is what you compare with.", "as it is now", "room = 21 °C"),
    /** How it is afterwards. */
    AGAINST("And changed? A name, and what is set: chilled = -6 °C.", "changed", "chilled = -6 °C"),
    /** How often it can be set. */
    CHANGE("Can you switch between the two from one run to the next? If it takes long, such as carrying it outdoors, say no: it is then set once for a"
            + " whole sitting, and sittings are what counts.", "switch from run to run, y or n", "n"),
    /** What is measured. */
    METRIC("What do you measure? Such as render rate, build time or score.", "what is measured", "render rate"),
    /** In which unit. */
    UNIT("In which unit? Such as frames/s or s; Enter alone for none.", "unit", ""),
    /** Which way is good. */
    BETTER("Is a larger number better, or a smaller one?", "higher or lower", "higher"),
    /** The smallest change worth having. */
    MATTERS("What is the smallest change that would matter to you? A smaller one costs many more runs: half the change, four times the runs.",
            "change that matters", "3 %"),
    /** What is to be shown. */
    CLAIM("What do you want to show: a gain, or that it stays the same?", "gain or same", "gain"),
    /** Noise from run to run. */
    NOISE("How much does one run differ from the next when nothing changes (standard deviation in percent)? Not known is an answer: then run a pilot first,"
            + " three sittings of four runs as it is now.", "run to run, or Enter: not known", ""),
    /** Noise from session to session. */
    SESSION_NOISE("And how much does one sitting differ from another on another day?", "sitting to sitting", "0.8 %"),
    /** Time of a run. */
    TRIAL_TIME("How long does one run take, with all that belongs to it?", "time of a run", "5 min"),
    /** Time to settle. */
    SOAK("How long must the device settle at the start of a sitting?", "time to settle", "20 min"),
    /** Time to open a changed session. */
    SET_UP("How long does it take to set up a changed sitting, the way out included?", "time to set up", "15 min"),
    /** Limit outdoors. */
    OUTDOORS("How long can you be outdoors in all? Enter alone for no limit.", "outdoors at most", ""),
    /** Power drawn. */
    DRAW("How much power does a run draw, for the energy? Enter alone when it does not matter.", "mean power, W", ""),
    /** Size. */
    SIZE("How large shall it be? The table shows what each size tells and takes; choose with two numbers.", "size", ""),
    /** The device. */
    DEVICE("Which device? Model and which one of them.", "device", "device under test"),
    /** The question in a sentence. */
    TITLE("The question in a sentence, for the head of the report.", "title", ""),
    /** To write it. */
    WRITE("Enter writes the plan. back changes an answer.", "Enter to write it", "");

    private final String question;
    private final String prompt;
    private final String example;

    GuideStep(String question, String prompt, String example) {
        this.question = question;
        this.prompt = prompt;
        this.example = example;
    }

    /** What the person is asked, in sentences. */
    public String question() {
        return question;
    }

    /** The short words before the cursor. */
    public String prompt() {
        return prompt;
    }

    /** What Enter alone answers; empty where it answers nothing or something found from the other answers. */
    Optional<String> usual() {
        return example.isEmpty() ? Optional.empty() : Optional.of(example);
    }
}
