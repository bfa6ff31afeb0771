package org.culvert.platform.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** References within the committed contract: a fragment is a JSON Pointer (OpenAPI 3.1.0, Reference Object; RFC 6901). */
class ContractReferencesTest {
    private final JsonNode contract;

    ContractReferencesTest() throws IOException {
        contract = new ObjectMapper().readTree(Files.readString(Path.of("openapi/culvert.json")));
    }

    @Test
    void whatIsReferredToIsThere() {
        Set<String> references = new TreeSet<>();
        contract.findValues("$ref").forEach(reference -> references.add(reference.asText()));
        assertThat(references).hasSizeGreaterThan(100).allSatisfy(reference -> {
            assertThat(reference).startsWith("#/");
            assertThat(contract.at(reference.substring(1)).isMissingNode())
                    .as(reference)
                    .isFalse();
        });
    }

    @Test
    void aCorrectionsFieldIsItsValueWithoutABox() {
        JsonNode schemas = contract.at("/components/schemas");
        assertThat(schemas)
                .isNotEmpty()
                .allSatisfy(schema -> assertThat(schema.at("/properties/made").isMissingNode())
                        .isTrue());
        assertThat(schemas.has("ChangeEntry")).isTrue();
        assertThat(schemas.at("/TrafficCountCorrection/properties/station/type").toString())
                .contains("string");
    }
}
