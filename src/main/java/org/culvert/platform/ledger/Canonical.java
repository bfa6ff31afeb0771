package org.culvert.platform.ledger;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Writes a record the same way in every process: whole, whoever asks, with keys in order and sets sorted. This is what
 * digests are made of; nobody is shown it.
 */
final class Canonical {
    private static final ObjectMapper MAPPER = mapper();

    private Canonical() {}

    static String text(@Nullable Object value) throws JsonProcessingException {
        return MAPPER.writeValueAsString(value);
    }

    private static ObjectMapper mapper() {
        var sets = new SimpleModule().addSerializer(new SortedSets());
        return JsonMapper.builder()
                .addModule(new JavaTimeModule())
                .addModule(sets)
                .enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
                .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
                .disable(SerializationFeature.FAIL_ON_EMPTY_BEANS)
                .build();
    }

    /** An unmodifiable set of the JDK is walked in another order in every process. */
    private static final class SortedSets extends StdSerializer<Set<?>> {
        private static final long serialVersionUID = 1;

        SortedSets() {
            super(Set.class, false);
        }

        @Override
        public void serialize(Set<?> set, JsonGenerator out, SerializerProvider provider) throws IOException {
            List<String> texts = new ArrayList<>();
            for (Object member : set) {
                texts.add(text(member));
            }
            texts.sort(null);
            out.writeStartArray();
            for (String text : texts) {
                out.writeRawValue(text);
            }
            out.writeEndArray();
        }
    }
}
