package org.culvert.platform.hostile;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** The operations of the committed contract, and bodies that they accept, with names in braces for what they refer to. */
final class Contract {
    static final ObjectMapper JSON = new ObjectMapper();

    /** Bodies that are right, by operation; those of corrections are made from the contract. */
    static final Map<String, JsonNode> GOOD = good();

    /**
     * One operation.
     *
     * @param mediaType what it takes, or an empty text
     * @param parameters its query parameters
     */
    record Operation(String verb, String path, String mediaType, JsonNode schema, Set<String> parameters) {
        String name() {
            return verb + " " + path;
        }

        boolean isSafe() {
            return verb.equals("GET");
        }

        boolean isForm() {
            return mediaType.equals("application/x-www-form-urlencoded") || isOfParts();
        }

        /** A form with a file in it. */
        boolean isOfParts() {
            return mediaType.equals("multipart/form-data");
        }

        /** A table that is chosen in a form. */
        boolean isUpload() {
            return isOfParts() && path.equals("/records");
        }

        boolean isFile() {
            return schema.path("format").asText().equals("binary");
        }
    }

    private final JsonNode document;

    Contract() throws IOException {
        this.document = JSON.readTree(Files.readString(Path.of("openapi/culvert.json")));
    }

    private static Map<String, JsonNode> good() {
        Map<String, JsonNode> good = new LinkedHashMap<>();
        try (InputStream bodies = Contract.class.getResourceAsStream("/hostile/bodies.json")) {
            JSON.readTree(bodies).properties().forEach(entry -> good.put(entry.getKey(), entry.getValue()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return good;
    }

    List<Operation> operations() {
        List<Operation> operations = new ArrayList<>();
        document.get("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(verb -> {
                    JsonNode content = verb.getValue().path("requestBody").path("content");
                    String type = content.isEmpty() ? "" : content.fieldNames().next();
                    Set<String> parameters = new LinkedHashSet<>();
                    for (JsonNode parameter : verb.getValue().path("parameters")) {
                        if (parameter.path("in").asText().equals("query")) {
                            parameters.add(parameter.path("name").asText());
                        }
                    }
                    operations.add(new Operation(
                            verb.getKey().toUpperCase(Locale.ROOT),
                            path.getKey(),
                            type,
                            content.path(type).path("schema"),
                            parameters));
                }));
        return operations;
    }

    /** Bodies to spoil: the good one, or a correction of each field alone. */
    List<JsonNode> bodies(Operation operation) {
        JsonNode good = GOOD.get(operation.name());
        if (good != null) {
            return List.of(good);
        }
        if (!operation.verb().equals("PATCH")) {
            throw new IllegalStateException("there is no good body for " + operation.name());
        }
        List<JsonNode> bodies = new ArrayList<>();
        resolved(operation.schema()).path("properties").properties().forEach(field -> {
            ObjectNode body = JSON.createObjectNode();
            body.put("reason", "it was wrong");
            if (!field.getKey().equals("reason")) {
                body.set(field.getKey(), value(operation, field.getKey(), field.getValue()));
                bodies.add(body);
            }
        });
        return bodies;
    }

    /** A placement's visit is of the animal that is placed. */
    private JsonNode value(Operation operation, String name, JsonNode schema) {
        return name.equals("visitId") && operation.path().startsWith("/api/placements")
                ? text("{placedVisit}")
                : value(name, schema);
    }

    private JsonNode resolved(JsonNode schema) {
        JsonNode resolved = schema;
        while (resolved.has("$ref") || resolved.has("anyOf") || resolved.has("allOf")) {
            resolved = resolved.has("$ref")
                    ? document.at(resolved.get("$ref").asText().substring(1))
                    : resolved.get(resolved.has("anyOf") ? "anyOf" : "allOf").get(0);
        }
        return resolved;
    }

    private JsonNode value(String name, JsonNode schema) {
        JsonNode resolved = resolved(schema);
        String reference = schema.path("$ref").asText();
        if (reference.endsWith("/Instant")) {
            return text("2026-01-05T10:00:00Z");
        }
        if (reference.endsWith("/LocalDate")) {
            return text("2030-01-05");
        }
        if (resolved.has("enum")) {
            return resolved.get("enum").get(0);
        }
        return switch (name) {
            case "holder" -> JSON.createObjectNode().put("memberId", "{helper}");
            case "place" -> GOOD.get("POST /api/traffic-counts").get("place");
            case "heavyVehicleShare" -> JSON.getNodeFactory().numberNode(0.25);
            case "foundPlace" ->
                JSON.createObjectNode()
                        .set(
                                "decimalDegrees",
                                JSON.createObjectNode().put("latitude", "-30.5").put("longitude", "150.05"));
            case "caller" -> JSON.createObjectNode().put("name", "Another").put("phone", "555 0103");
            case "organisationId" -> text("{organisation}");
            case "memberId", "holderMemberId" -> text("{helper}");
            case "visitId" -> text("{visit}");
            case "attendanceId" -> text("{attendance}");
            case "motherId" -> text("{animal}");
            case "scientificName" -> text("{taxonName}");
            case "taxonGroup" -> text("hostile");
            case "taxonGroups" -> JSON.createArrayNode().add("hostile");
            case "part" -> text("pelvis");
            case "rows" -> GOOD.get("POST /api/growth-tables").get("rows");
            case "steps" -> GOOD.get("POST /api/plan-templates").get("steps");
            case "jurisdiction" -> text("XH");
            case "order" ->
                JSON.createObjectNode()
                        .put("authority", "the department")
                        .put("number", "O-2")
                        .put("date", "2026-01-05")
                        .put("words", "floods");
            case "placesByGroup" -> JSON.createObjectNode().put("hostile", 3);
            case "supervisorId" -> text("{helper}");
            case "treats" -> JSON.createArrayNode().add("turtles");
            case "opening" ->
                JSON.createArrayNode()
                        .add(JSON.createObjectNode()
                                .put("day", "MONDAY")
                                .put("opens", "08:00")
                                .put("closes", "18:00"));
            case "cause" -> text("unknown");
            default ->
                switch (resolved.path("type").asText()) {
                    case "integer" -> JSON.getNodeFactory().numberNode(1);
                    case "number" -> JSON.getNodeFactory().numberNode(20.5);
                    case "boolean" -> JSON.getNodeFactory().booleanNode(true);
                    case "string" -> text("other words");
                    case "array" -> JSON.createArrayNode().add(value(name, resolved.get("items")));
                    default -> throw new IllegalStateException("no value for " + name + " " + schema);
                };
        };
    }

    private static JsonNode text(String text) {
        return JSON.getNodeFactory().textNode(text);
    }
}
