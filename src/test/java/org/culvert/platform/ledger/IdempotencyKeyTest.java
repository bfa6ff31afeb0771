package org.culvert.platform.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.culvert.platform.InvalidException;
import org.culvert.platform.LedgerException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class IdempotencyKeyTest {
    /** The example of draft-ietf-httpapi-idempotency-key-header-06, section 2.1. */
    @Test
    void readsTheExampleOfTheDraft() {
        assertThat(IdempotencyKey.of(List.of("\"8e03978e-40d5-43dd-bc93-6894a57f9324\""))
                        .text())
                .isEqualTo("8e03978e-40d5-43dd-bc93-6894a57f9324");
    }

    @Test
    void quotedAndBareAreTheSameKey() {
        assertThat(IdempotencyKey.of(List.of("\"abc\""))).isEqualTo(IdempotencyKey.of(List.of("abc")));
    }

    /** RFC 8941, section 4.2.5: a backslash escapes a quote or itself, and nothing else. */
    @Test
    void readsEscapesOfStructuredFields() {
        assertThat(IdempotencyKey.of(List.of("\"a\\\"b\\\\c\"")).text()).isEqualTo("a\"b\\c");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "\"\"", "\"open", "\"a\"b", "\"a\\n\"", "two words", "a,b", "a;b=1", "\"a\";b=1", "schlüssel"
            })
    void refusesWhatIsNoKey(String header) {
        assertThatThrownBy(() -> IdempotencyKey.of(List.of(header))).isInstanceOf(InvalidException.class);
    }

    @Test
    void refusesTwoKeysAndTooLongOnes() {
        assertThatThrownBy(() -> IdempotencyKey.of(List.of("a", "b"))).isInstanceOf(InvalidException.class);
        assertThat(IdempotencyKey.of(List.of("k".repeat(200))).text()).hasSize(200);
        assertThatThrownBy(() -> IdempotencyKey.of(List.of("k".repeat(201)))).isInstanceOf(InvalidException.class);
    }

    @Test
    void wantsOne() {
        assertThatThrownBy(() -> IdempotencyKey.of(List.of())).isInstanceOf(LedgerException.class);
    }
}
