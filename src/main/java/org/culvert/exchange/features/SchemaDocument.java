package org.culvert.exchange.features;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;

/** Says what each property of a collection's features is, as JSON Schema by OGC API - Features - Part 5 (OGC 23-058). */
@ApplicationScoped
class SchemaDocument {
    private static final String ROLE = "x-ogc-role";
    private static final String ORDER = "x-ogc-propertySeq";
    private static final String READ_ONLY = "readOnly";

    private final FeatureCatalogue catalogue;
    private final ObjectMapper mapper;

    SchemaDocument(FeatureCatalogue catalogue, ObjectMapper mapper) {
        this.catalogue = catalogue;
        this.mapper = mapper;
    }

    ObjectNode of(FeatureSource source, String address) {
        ObjectNode schema = mapper.createObjectNode();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("$id", address);
        schema.put("type", "object");
        schema.put("title", source.title());
        schema.put("description", source.description());
        ObjectNode properties = schema.putObject("properties");
        int order = 1;
        properties
                .putObject("id")
                .put("title", "id")
                .put("description", "Identifier within the collection")
                .put("type", "string")
                .put(READ_ONLY, true)
                .put(ROLE, "id")
                .put(ORDER, order++);
        for (FeatureProperty property : catalogue.properties(source)) {
            ObjectNode told = properties.putObject(property.name());
            told.put("title", property.name());
            told.put("description", property.description());
            told.put("type", property.type());
            told.put(READ_ONLY, true);
            if (property.format() != null) {
                told.put("format", property.format());
            }
            if (property.name().equals(source.time())) {
                told.put(ROLE, "primary-instant");
            }
            told.put(ORDER, order++);
        }
        properties
                .putObject("geometry")
                .put("title", "geometry")
                .put("description", "Where it is; null where that is not known or not told")
                .put("format", source.shapeType().format())
                .put(READ_ONLY, true)
                .put(ROLE, "primary-geometry")
                .put(ORDER, order);
        schema.put("additionalProperties", false);
        return schema;
    }
}
