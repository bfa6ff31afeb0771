package org.culvert.web.acts;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.forms.Labels;
import org.culvert.web.kept.KeptOperations;
import org.culvert.web.settings.SheetOperations;
import org.culvert.web.words.ChoiceWords;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Whatever a page shows of a record, or asks in a form, is said in words and in both languages. The contract in {@code openapi/}
 * is the measure: every field of what the API answers where such a page reads.
 */
@QuarkusTest
class RecordWordsResourceTest {
    /** What no such page shows: its own identifiers, and what stands elsewhere on it. */
    private static final Set<String> NOT_SHOWN = Set.of(
            "id",
            "number",
            "caseNumber",
            "collision",
            "metresAlongLink",
            "chainagePrecisionMetres",
            "stepKey",
            "record",
            "note",
            "sha256",
            "exif",
            "cautions",
            "tests",
            "gate",
            "sayToRescuer",
            "geometry",
            "vocabulary",
            "items",
            "next");

    private static final Set<String> NAMED = Set.of(
            "organisationId",
            "clinicId",
            "memberId",
            "leadMemberId",
            "carerMemberId",
            "releasedByMemberId",
            "limitId",
            "visitId",
            "photographId",
            "attendanceId",
            "motherId");

    /** Where a schema says that it is one of some (JSON Schema 2020-12). */
    private static final List<String> CHOICES = List.of("anyOf", "oneOf", "allOf");

    @Inject
    ActForms forms;

    private JsonNode contract;
    private final Set<String> fields = new TreeSet<>();
    private final Set<String> values = new TreeSet<>();

    @BeforeEach
    void read() throws IOException {
        contract = new ObjectMapper().readTree(Files.readString(Path.of("openapi/culvert.json")));
    }

    @Test
    void everyFieldOfARecordHasALabelInBothLanguages() throws IOException {
        KeptOperations.reads().forEach(reads -> walk(reads, false));
        SheetOperations.all().forEach(one -> walk(one.reads(), true));
        assertThat(fields).hasSizeGreaterThan(200).contains("bornOn", "stillIncubating", "rhythm");
        assertThat(values).contains("daily", "female");
        assertThat(without(fields, Labels.FIELDS)).isEmpty();
        assertThat(without(values, List.of(ChoiceWords.class))).isEmpty();
    }

    @Test
    void everyColumnOfATableHasALabelInBothLanguages() throws IOException {
        Set<String> columns = new TreeSet<>();
        for (Act<?> act : KeptOperations.acts()) {
            columns(act, columns);
        }
        for (Act<?> act : SheetOperations.acts()) {
            columns(act, columns);
        }
        assertThat(columns).contains("firstDay", "words");
        assertThat(without(columns, Labels.FIELDS)).isEmpty();
    }

    private void columns(Act<?> act, Set<String> columns) {
        for (FieldShape shape : forms.shapes(act)) {
            shape.columns().forEach(column -> columns.add(column.name()));
        }
    }

    /** @param lists whether lists of records have a label, and not their fields alone */
    private void walk(String operation, boolean lists) {
        int space = operation.indexOf(' ');
        JsonNode answers = contract.path("paths")
                .path(operation.substring(space + 1))
                .path("get")
                .path("responses");
        answers.fields().forEachRemaining(answer -> {
            if (answer.getKey().startsWith("2")) {
                walk(answer.getValue().path("content").path("application/json").path("schema"), new HashSet<>(), lists);
            }
        });
    }

    private void walk(JsonNode schema, Set<String> above, boolean lists) {
        String name = schema.path("$ref").asText("");
        if (!name.isEmpty()) {
            if (above.add(name)) {
                walk(contract.at(name.substring(1)), above, lists);
            }
            return;
        }
        choices(schema).forEach(one -> walk(one, above, lists));
        schema.path("enum").forEach(value -> {
            if (value.isTextual()) {
                values.add(value.asText());
            }
        });
        if (schema.has("items")) {
            walk(schema.get("items"), above, lists);
        }
        schema.path("properties").fields().forEachRemaining(field -> {
            String of = field.getKey();
            if (of.equals("items")) {
                walk(field.getValue(), above, lists);
            } else if (!NOT_SHOWN.contains(of)) {
                boolean said = !of.matches(".*Ids?") || NAMED.contains(of);
                if (said && (!isOfParts(field.getValue(), Set.of()) || lists && isList(field.getValue()))) {
                    fields.add(of);
                }
                walk(field.getValue(), above, lists);
            }
        });
    }

    private boolean isOfParts(JsonNode schema, Set<String> above) {
        String name = schema.path("$ref").asText("");
        if (!name.isEmpty()) {
            return !above.contains(name) && isOfParts(contract.at(name.substring(1)), with(above, name));
        }
        return schema.has("properties")
                || schema.has("items") && isOfParts(schema.get("items"), above)
                || choices(schema).anyMatch(one -> isOfParts(one, above));
    }

    private static boolean isList(JsonNode schema) {
        return schema.has("items") || choices(schema).anyMatch(RecordWordsResourceTest::isList);
    }

    private static Stream<JsonNode> choices(JsonNode schema) {
        return CHOICES.stream()
                .flatMap(choice -> StreamSupport.stream(schema.path(choice).spliterator(), false));
    }

    private static Set<String> with(Set<String> above, String name) {
        Set<String> all = new HashSet<>(above);
        all.add(name);
        return all;
    }

    private static Set<String> without(Set<String> names, List<Class<?>> bundles) throws IOException {
        Set<String> without = new TreeSet<>(names);
        Set<String> german = new TreeSet<>(names);
        for (Class<?> bundle : bundles) {
            Arrays.stream(bundle.getMethods()).forEach(method -> without.remove(method.getName()));
            String simple = bundle.getSimpleName().replace("Words", "s");
            try (InputStream file = bundle.getResourceAsStream(
                    "/messages/" + Character.toLowerCase(simple.charAt(0)) + simple.substring(1) + "_de.properties")) {
                var words = new Properties();
                words.load(file);
                german.removeAll(words.stringPropertyNames());
            }
        }
        german.forEach(name -> without.add(name + " in German"));
        return without;
    }
}
