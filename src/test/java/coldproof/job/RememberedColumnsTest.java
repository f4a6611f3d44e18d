package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RememberedColumnsTest {
    @Test
    void whatWasSetIsRememberedAndReplaced(@TempDir Path study) {
        assertEquals(List.of(), RememberedColumns.remembered(study));
        RememberedColumns.remember(study, List.of("power=P 2", "die=T#2"));
        assertEquals(List.of("power=P 2", "die=T#2"), RememberedColumns.remembered(study));
        RememberedColumns.remember(study, List.of("power=P 1"));
        assertEquals(List.of("power=P 1"), RememberedColumns.remembered(study));
    }
}
