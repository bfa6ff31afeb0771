package org.culvert.platform.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.qute.TemplateInstance;
import io.smallrye.mutiny.Multi;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.sse.OutboundSseEvent;
import java.io.IOException;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.culvert.platform.Role;
import org.jboss.resteasy.reactive.RestResponse;
import org.junit.jupiter.api.Test;

/** The table against the classes: no operation and no field without a row, no row without an operation or a field. */
class WhoSeesWhatTest {
    private static final SightTable TABLE = SightTable.load();

    /** What is no record and goes out all the same: pages, files, and what says nothing. */
    private static final Set<Class<?>> NO_RECORDS = Set.of(
            void.class,
            Response.class,
            TemplateInstance.class,
            String.class,
            byte[].class,
            // Of how far a run has come: a part of the run, for the same roles
            OutboundSseEvent.class);

    @Test
    void everyFieldThatCanGoOutHasARow() {
        List<String> missing = new ArrayList<>();
        for (Class<?> record : outgoing().values()) {
            String resource = Resources.name(record);
            for (RecordComponent component : record.getRecordComponents()) {
                if (!TABLE.fields().getOrDefault(resource, Set.of()).contains(component.getName())) {
                    missing.add(resource + " " + component.getName());
                }
            }
        }
        assertThat(missing).as("fields without a row in who-sees-what.md").isEmpty();
    }

    @Test
    void everyRowIsOfAFieldThatGoesOut() {
        List<String> gone = new ArrayList<>();
        Map<String, Class<?>> outgoing = outgoing();
        TABLE.fields().forEach((resource, fields) -> {
            Class<?> record = outgoing.get(resource);
            Set<String> names = new TreeSet<>();
            if (record != null) {
                Arrays.stream(record.getRecordComponents()).forEach(component -> names.add(component.getName()));
            }
            fields.stream().filter(field -> !names.contains(field)).forEach(field -> gone.add(resource + " " + field));
        });
        assertThat(gone)
                .as("rows in who-sees-what.md of fields that do not go out")
                .isEmpty();
    }

    @Test
    void everyOperationHasARowThatSaysWhatItsAnnotationSays() {
        Map<String, Set<String>> allowed = new TreeMap<>();
        Outgoing.operations().forEach((operation, method) -> allowed.put(operation, allowed(method)));
        Map<String, Set<String>> told = new TreeMap<>();
        TABLE.operations().forEach(operation -> told.put(operation, new TreeSet<>(TABLE.rolesOf(operation))));
        assertThat(told).isEqualTo(allowed);
    }

    private static Set<String> allowed(Method method) {
        Set<String> everybody = new TreeSet<>(Role.ALL);
        if (method.isAnnotationPresent(RolesAllowed.class)) {
            List<String> roles =
                    List.of(method.getAnnotation(RolesAllowed.class).value());
            return roles.contains("**") ? everybody : new TreeSet<>(roles);
        }
        assertThat(method.isAnnotationPresent(PermitAll.class)
                        || method.getDeclaringClass().isAnnotationPresent(PermitAll.class))
                .as("%s says who may call it", method)
                .isTrue();
        everybody.add(SightTable.PUBLIC);
        return everybody;
    }

    @Test
    void noTwoRecordsThatGoOutHaveOneName() {
        assertThat(outgoing()).isNotEmpty();
    }

    @Test
    void whatGoesOutIsRecordsOrOneOfAFewOtherThings() {
        List<String> others = new ArrayList<>();
        Outgoing.operations().forEach((operation, method) -> {
            Type type = bare(Outgoing.answer(method));
            if (!NO_RECORDS.contains(type) && Outgoing.records(type).isEmpty()) {
                others.add(operation + " " + type);
            }
        });
        assertThat(others).as("answers that the table cannot reach").isEmpty();
    }

    @Test
    void aTableThatSaysSomethingUnknownIsRefused() {
        String head = "| resource | fields | public | " + String.join(" | ", Role.ALL) + " |\n|---|---|\n";
        String row = "| case | id | yes" + " | yes".repeat(Role.ALL.size()) + " |\n";
        assertThat(SightTable.parse(head + row).fields()).containsEntry("case", Set.of("id"));
        assertThatThrownBy(() -> SightTable.parse(head + row + row)).hasMessageContaining("two rows");
        assertThatThrownBy(() -> SightTable.parse(head + row.replaceFirst("yes", "perhaps")))
                .hasMessageContaining("line 3")
                .hasMessageContaining("there is no cell \"perhaps\"");
        assertThatThrownBy(() -> SightTable.parse(head.replace("| public |", "| neighbour |")))
                .hasMessageContaining("there is no role neighbour");
        assertThatThrownBy(() -> SightTable.parse(head.replace("| officer ", "")))
                .hasMessageContaining("a role has no column");
        assertThatThrownBy(() -> SightTable.parse(head + "| case | id | yes |\n"))
                .hasMessageContaining("cells under");
    }

    @Test
    void severalRolesSeeTheWidest() {
        Right own = Right.of("own/general");
        assertThat(own.or(Right.of("coarse"))).isEqualTo(own);
        assertThat(Right.of("own").or(Right.of("general"))).isEqualTo(own);
        assertThat(Right.of("own").or(Right.of("yes")).exact()).isEqualTo(Right.Exact.ALWAYS);
        assertThat(Right.of("–").or(Right.of("–")).isNothing()).isTrue();
    }

    @Test
    void theDevelopersPageCarriesTheTableAsItStands() throws IOException {
        String page = Files.readString(Path.of("DEVELOPERS.md"));
        String marker = "<!-- who sees what -->\n";
        int from = page.indexOf(marker);
        int to = page.indexOf(marker, from + 1);
        assertThat(from).isPositive();
        assertThat(to).isGreaterThan(from);
        String file = Files.readString(Path.of("src/main/resources/who-sees-what.md"));
        assertThat(page.substring(from + marker.length(), to)).isEqualTo(file.substring(file.indexOf("\n\n") + 2));
    }

    private static Map<String, Class<?>> outgoing() {
        Map<String, Class<?>> byName = new TreeMap<>();
        Set<Class<?>> all = new LinkedHashSet<>();
        Outgoing.operations().values().forEach(method -> all.addAll(Outgoing.records(Outgoing.answer(method))));
        for (Class<?> record : all) {
            Class<?> other = byName.put(Resources.name(record), record);
            assertThat(other)
                    .as("another record named %s", Resources.name(record))
                    .isNull();
        }
        return byName;
    }

    private static Type bare(Type type) {
        return type instanceof ParameterizedType parameterized
                        && Set.of(RestResponse.class, Multi.class).contains(parameterized.getRawType())
                ? parameterized.getActualTypeArguments()[0]
                : type;
    }
}
