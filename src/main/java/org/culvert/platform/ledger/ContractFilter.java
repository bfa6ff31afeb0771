package org.culvert.platform.ledger;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import jakarta.ws.rs.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.jboss.jandex.AnnotationInstance;
import org.jboss.jandex.IndexView;
import org.jboss.jandex.MethodInfo;
import org.jspecify.annotations.Nullable;

/** Says in the contract what holds for every operation: keys, tags, reading as of a date, and problems. */
@OpenApiFilter(OpenApiFilter.RunStage.BUILD)
public class ContractFilter implements OASFilter {
    private static final Set<PathItem.HttpMethod> UNSAFE = Set.of(
            PathItem.HttpMethod.POST, PathItem.HttpMethod.PUT, PathItem.HttpMethod.PATCH, PathItem.HttpMethod.DELETE);
    private static final String CHANGE = "Change";
    private static final Set<String> IN_A_BOX = Set.of("made", "value");

    private final Set<String> questions;
    private final Set<String> changes;
    private final Set<String> tagged;

    /** @param index the classes of the server, whose annotations say what an operation is */
    public ContractFilter(IndexView index) {
        questions = operations(index, KeepsNothing.class);
        changes = operations(index, NeedsTag.class);
        tagged = operations(index, Tagged.class);
    }

    /** The operations whose methods carry an annotation, as {@code METHOD /path}. */
    private static Set<String> operations(IndexView index, Class<?> annotation) {
        Set<String> operations = new HashSet<>();
        for (AnnotationInstance instance : index.getAnnotations(annotation)) {
            MethodInfo method = instance.target().asMethod();
            String path = value(method.declaringClass().declaredAnnotation(Path.class))
                    + value(method.annotation(Path.class));
            for (PathItem.HttpMethod verb : PathItem.HttpMethod.values()) {
                if (method.hasAnnotation("jakarta.ws.rs." + verb)) {
                    operations.add(verb + " " + path);
                }
            }
        }
        return operations;
    }

    private static String value(@Nullable AnnotationInstance path) {
        return path == null ? "" : path.value().asString();
    }

    @Override
    public void filterOpenAPI(OpenAPI contract) {
        if (contract.getPaths() == null) {
            return;
        }
        contract.getPaths().getPathItems().forEach((path, item) -> {
            if (path.startsWith("/api")) {
                item.getOperations().forEach((method, operation) -> complete(path, method, operation));
            }
        });
        simplifyChanges(contract);
    }

    private void complete(String path, PathItem.HttpMethod method, Operation operation) {
        problem(
                operation,
                "400",
                "Something in the request is not right: errors say which field and what would be right");
        problem(operation, "401", "Nobody is signed in");
        problem(operation, "403", "The role does not reach that");
        if (UNSAFE.contains(method)) {
            if (!questions.contains(method + " " + path)) {
                operation.addParameter(
                        header(
                                IdempotencyKey.HEADER,
                                true,
                                "A key that the client makes up for this change and repeats with every try of it; kept for 24 hours"));
                problem(operation, "409", "It contradicts what is recorded, or the first try is still running");
                problem(operation, "422", "A rule refuses it, or the key came with another request");
            }
        } else {
            operation.addParameter(OASFactory.createParameter()
                    .name(AsOf.PARAMETER)
                    .in(Parameter.In.QUERY)
                    .description("Reads what was recorded at that instant; personal data are always as they are now")
                    .schema(text().format("date-time")));
        }
        if (path.contains("{")) {
            problem(operation, "404", "Nothing is there, or nothing that the asker may see");
        }
        if (tagged.contains(method + " " + path)) {
            operation.addParameter(header("If-None-Match", false, "The ETag of what the client has already"));
            response(operation, "304", "The client has it already");
        }
        if (changes.contains(method + " " + path)) {
            operation.addParameter(header(
                    "If-Match", true, "The ETag that the record was read with; the answer carries the next one"));
            problem(operation, "412", "Someone changed it in between");
            problem(operation, "428", "If-Match is missing");
        }
    }

    private static void response(Operation operation, String status, String description) {
        operation
                .getResponses()
                .addAPIResponse(status, OASFactory.createAPIResponse().description(description));
    }

    private static void problem(Operation operation, String status, String description) {
        if (operation.getResponses() == null) {
            operation.setResponses(OASFactory.createAPIResponses());
        }
        APIResponse known = operation.getResponses().getAPIResponse(status);
        if (known == null || known.getContent() == null) {
            operation
                    .getResponses()
                    .addAPIResponse(
                            status,
                            OASFactory.createAPIResponse()
                                    .description(description)
                                    .content(OASFactory.createContent()
                                            .addMediaType("application/problem+json", OASFactory.createMediaType())));
        }
    }

    private static Parameter header(String name, boolean required, String description) {
        return OASFactory.createParameter()
                .name(name)
                .in(Parameter.In.HEADER)
                .required(required)
                .description(description)
                .schema(text());
    }

    private static Schema text() {
        return OASFactory.createSchema().addType(Schema.SchemaType.STRING);
    }

    /** A field of a correction is written as its value, or null: the box around it is only in the code. */
    private static void simplifyChanges(OpenAPI contract) {
        if (contract.getComponents() == null || contract.getComponents().getSchemas() == null) {
            return;
        }
        Map<String, Schema> schemas = contract.getComponents().getSchemas();
        for (Schema schema : schemas.values()) {
            if (schema.getProperties() != null) {
                Map.copyOf(schema.getProperties()).forEach((name, property) -> {
                    Schema box = boxOf(property, schemas);
                    if (box != null) {
                        Schema value = box.getProperties() == null
                                ? null
                                : box.getProperties().get("value");
                        schema.addProperty(name, value == null ? OASFactory.createSchema() : value);
                    }
                });
            }
        }
        List.copyOf(schemas.keySet()).stream()
                .filter(name -> isBox(name, schemas.get(name)))
                .forEach(contract.getComponents()::removeSchema);
    }

    private static @Nullable Schema boxOf(Schema property, Map<String, Schema> schemas) {
        String reference = property.getRef();
        if (reference == null) {
            return null;
        }
        String name = reference.substring(reference.lastIndexOf('/') + 1);
        Schema schema = schemas.get(name);
        return isBox(name, schema) ? schema : null;
    }

    /** Whether it is a {@link Change} of something, and not a record of a room whose name begins with the same word. */
    private static boolean isBox(String name, @Nullable Schema schema) {
        return schema != null
                && name.startsWith(CHANGE)
                && schema.getProperties() != null
                && schema.getProperties().keySet().equals(IN_A_BOX);
    }
}
