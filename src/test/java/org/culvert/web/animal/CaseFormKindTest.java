package org.culvert.web.animal;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** A form stands on the page of those alone from whom it is taken. */
class CaseFormKindTest {
    @Test
    void formsStandWhereTheyAreTaken() {
        UUID caseId = UUID.randomUUID();
        UUID target = UUID.randomUUID();
        Map<String, Set<String>> shown = new TreeMap<>();
        for (CaseFormKind kind : CaseFormKind.values()) {
            shown.put(kind.address(caseId, target), kind.roles());
        }
        Map<String, Set<String>> taken = new TreeMap<>();
        for (Method method : CaseFormResource.class.getDeclaredMethods()) {
            if (method.isAnnotationPresent(POST.class)) {
                String path = "/cases"
                        + method.getAnnotation(Path.class)
                                .value()
                                .replace("{id}", caseId.toString())
                                .replaceAll("\\{\\w+}", target.toString());
                taken.put(
                        path,
                        Set.copyOf(Arrays.asList(
                                method.getAnnotation(RolesAllowed.class).value())));
            }
        }
        assertThat(shown).isEqualTo(taken).hasSize(CaseFormKind.values().length);
    }
}
