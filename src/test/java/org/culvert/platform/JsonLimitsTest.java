package org.culvert.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.culvert.platform.ledger.Change;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers and texts as RFC 8259, sections 6 and 8, has them; times as RFC 3339, section 5.6. */
class JsonLimitsTest {
    record Inner(@Nullable String words) {}

    record Sent(
            @Nullable String name,
            @Nullable @Size(max = 5) String code,
            @Nullable @Size(max = 20_000) String words,
            @Nullable @Size(max = 3) List<String> list,
            @Nullable Integer whole,
            @Nullable Double number,
            @Nullable Boolean truth,
            @Nullable Instant at,
            @Nullable LocalDate on,
            @Nullable Change<Instant> changedAt,
            @Nullable Change<LocalDate> changedOn,
            @Nullable Change<String> changedWords,
            @Nullable Change<Double> changedNumber,
            @Nullable Change<List<String>> changedList,
            @Nullable List<Inner> inner) {}

    private static ObjectMapper mapper() {
        var mapper = new ObjectMapper().registerModule(new JavaTimeModule());
        new JsonLimits().customize(mapper);
        return mapper;
    }

    private static Sent read(String json) throws JsonProcessingException {
        return mapper().readValue(json, Sent.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"name\":\"a\\u0000\"}",
                "{\"name\":\"\\ud800\"}",
                "{\"name\":\"\\u0007\"}",
                "{\"name\":{}}",
                "{\"name\":[]}",
                "{\"list\":[\"a\\u0000\"]}",
                "{\"list\":[null]}",
                "{\"inner\":[null]}",
                "{\"inner\":[{\"words\":\"\\u0000\"}]}",
                "{\"name\":true}",
                "{\"whole\":3.7}",
                "{\"whole\":\"3\"}",
                "{\"whole\":true}",
                "{\"whole\":2147483648}",
                "{\"number\":\"NaN\"}",
                "{\"number\":NaN}",
                "{\"number\":1e400}",
                "{\"number\":\"1.5\"}",
                "{\"truth\":\"true\"}",
                "{\"truth\":1}",
                "{\"at\":99999999999999}",
                "{\"at\":1.5}",
                "{\"at\":\"+285428751-11-12T07:36:33Z\"}",
                "{\"at\":\"0000-01-01T00:00:00Z\"}",
                "{\"at\":\"\"}",
                "{\"at\":\"2026-02-30T00:00:00Z\"}",
                "{\"at\":\"2026-01-01T00:00:00\"}",
                "{\"on\":[2026,1,1]}",
                "{\"on\":20000}",
                "{\"on\":\"+999999999-12-31\"}",
                "{\"on\":\"2026-02-30\"}",
                "{\"on\":\"\"}",
                "{\"changedAt\":99999999999999}",
                "{\"changedAt\":\"+285428751-11-12T07:36:33Z\"}",
                "{\"changedOn\":20000}",
                "{\"changedOn\":\"0000-01-01\"}",
                "{\"changedWords\":\"\\u0000\"}",
                "{\"changedNumber\":1e400}",
                "{\"changedList\":[null]}",
                "{\"changedList\":[\"\\u0000\"]}",
                "{\"name\":\"a\",\"name\":\"b\"}",
                "{} {}",
                "{}x",
                "{\"code\":\"123456\"}"
            })
    void whatNoFieldMayHoldIsRefused(String json) {
        assertThatThrownBy(() -> read(json)).isInstanceOf(JsonProcessingException.class);
    }

    @Test
    void aTextIsAsLongAsItsFieldSays() throws JsonProcessingException {
        assertThat(read("{\"code\":\"12345\"}").code()).hasSize(5);
        assertThat(read("{\"name\":\"%s\"}".formatted("x".repeat(2_000))).name())
                .hasSize(2_000);
        assertThat(read("{\"words\":\"%s\"}".formatted("x".repeat(20_000))).words())
                .hasSize(20_000);
        assertThat(read("{\"list\":[\"%s\"]}".formatted("x".repeat(100))).list())
                .hasSize(1);
        assertThat(read("{\"changedWords\":\"%s\"}".formatted("x".repeat(20_000)))
                        .changedWords()
                        .value())
                .hasSize(20_000);
        for (String field : List.of("name\":\"", "list\":[\"")) {
            String json = "{\"" + field + "x".repeat(2_001) + (field.endsWith("[\"") ? "\"]}" : "\"}");
            assertThatThrownBy(() -> read(json)).isInstanceOf(JsonProcessingException.class);
        }
        assertThatThrownBy(() -> read("{\"words\":\"%s\"}".formatted("x".repeat(20_001))))
                .isInstanceOf(JsonProcessingException.class);
    }

    @Test
    void whatIsRightIsReadAsItIs() throws JsonProcessingException {
        Sent sent = read("""
                {"name":"'; DROP TABLE calls; -- <b>\\ud83e\\udd94\\n\\t","number":-0.5,"whole":-3,"truth":false,
                 "at":"2026-01-05T10:00:00+10:00","on":"2026-01-05","changedAt":null,"changedWords":"words","list":[],
                 "changedList":["a"]}
                """);
        assertThat(sent.name()).isEqualTo("'; DROP TABLE calls; -- <b>\ud83e\udd94\n\t");
        assertThat(sent.number()).isEqualTo(-0.5);
        assertThat(sent.whole()).isEqualTo(-3);
        assertThat(sent.truth()).isFalse();
        assertThat(sent.at()).isEqualTo("2026-01-05T00:00:00Z");
        assertThat(sent.on()).isEqualTo("2026-01-05");
        assertThat(sent.changedWords().value()).isEqualTo("words");
        assertThat(sent.changedList().value()).containsExactly("a");
        assertThat(sent.changedAt().isMade()).isTrue();
        assertThat(sent.changedOn().isMade()).isFalse();
    }
}
