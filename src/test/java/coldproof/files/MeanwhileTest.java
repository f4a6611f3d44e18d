package coldproof.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

class MeanwhileTest {
    @Test
    void theWorkIsDoneByAnotherThreadOfTheNameGivenAndItsResultIsWaitedFor() {
        CountDownLatch goOn = new CountDownLatch(1);
        Meanwhile<String> meanwhile = Meanwhile.of("reading", () -> {
            await(goOn);
            return Thread.currentThread().getName();
        });
        goOn.countDown();
        assertEquals("reading", meanwhile.get());
        assertNotEquals("reading", Thread.currentThread().getName());
    }

    @Test
    void whatTheWorkThrowsIsThrownWhereItsResultIsAskedFor() {
        IllegalArgumentException refusal = new IllegalArgumentException("no");
        Meanwhile<String> refused = Meanwhile.of("refused", () -> {
            throw refusal;
        });
        assertSame(refusal, assertThrows(IllegalArgumentException.class, refused::get));
        StackOverflowError error = new StackOverflowError();
        Meanwhile<String> broken = Meanwhile.of("broken", () -> {
            throw error;
        });
        assertSame(error, assertThrows(StackOverflowError.class, broken::get));
    }

    @Test
    void whoIsInterruptedStillGetsTheResultAndStaysInterrupted() {
        CountDownLatch goOn = new CountDownLatch(1);
        Meanwhile<Integer> meanwhile = Meanwhile.of("slow", () -> {
            await(goOn);
            return 7;
        });
        Thread.currentThread().interrupt();
        new Thread(goOn::countDown).start();
        assertEquals(7, meanwhile.get());
        assertTrue(Thread.interrupted());
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException interrupted) {
            throw new IllegalStateException(interrupted);
        }
    }
}
