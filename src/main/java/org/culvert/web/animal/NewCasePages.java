package org.culvert.web.animal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseLists;
import org.culvert.animal.CaseService;
import org.culvert.call.CallEntry;
import org.culvert.call.CallView;
import org.culvert.call.IncidentService;
import org.culvert.call.IncidentView;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.platform.sight.Sight;
import org.culvert.roster.RosterService;
import org.culvert.web.desk.AnimalNames;

/** A case that is opened for an animal of an incident. */
@ApplicationScoped
class NewCasePages {
    static final String FORM = "new";
    private static final String ME = "me";
    private static final String HOLDER = "holder";
    private static final String NAME = "animal.scientificName";

    private static final List<CaseField> FIELDS = List.of(
            CaseField.of(CaseField.Type.hidden, "incidentId"),
            CaseField.of(CaseField.Type.hidden, "attendanceId"),
            CaseField.of(CaseField.Type.line, NAME).isNeeded(),
            CaseField.choice(HOLDER),
            CaseField.of(CaseField.Type.moment, "foundAt"),
            CaseField.choice("animal.sex", CallEntry.Sex.values()),
            CaseField.of(CaseField.Type.line, "animal.lifeStage"),
            CaseField.of(CaseField.Type.lines, "animal.naturalMarks"),
            CaseField.of(CaseField.Type.flag, "dependentYoung"),
            CaseField.of(CaseField.Type.flag, "originUnknown"));

    private final Template template;
    private final CasePages pages;
    private final CaseService cases;
    private final CaseLists lists;
    private final IncidentService incidents;
    private final AnimalNames names;
    private final RosterService roster;
    private final FormBodies bodies;
    private final Sight sight;

    NewCasePages(
            @Location("case-new.html") Template template,
            CasePages pages,
            CaseService cases,
            CaseLists lists,
            IncidentService incidents,
            AnimalNames names,
            RosterService roster,
            FormBodies bodies,
            Sight sight) {
        this.template = template;
        this.pages = pages;
        this.cases = cases;
        this.lists = lists;
        this.incidents = incidents;
        this.names = names;
        this.roster = roster;
        this.bodies = bodies;
        this.sight = sight;
    }

    /** A case of the same incident. */
    public record There(UUID id, String title) {}

    @Transactional
    TemplateInstance page(CaseSent sent) {
        UUID incidentId = seenIncident(sent.typed());
        IncidentView incident = incidents.getIncident(incidentId, false);
        CaseTongue tongue = pages.tongue();
        List<String> told = incident.calls().stream()
                .flatMap(call -> call.animals().stream())
                .map(CallView.AnimalView::vernacularName)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        Map<String, String> filled =
                told.size() == 1 ? Map.of(NAME, told.get(0), HOLDER, mine()) : Map.of(HOLDER, mine());
        return template.data("incident", incident.number())
                .data("told", told)
                .data(
                        "there",
                        lists.listOfIncident(incidentId).stream()
                                .map(one -> new There(
                                        one.id(),
                                        tongue.words()
                                                .caseOf(
                                                        one.number(),
                                                        one.animal().vernacularName())))
                                .toList())
                .data("fields", fields(tongue, sent, filled))
                .data("errors", sent.errors())
                .data("names", names.list())
                .data("key", UUID.randomUUID().toString());
    }

    private List<CaseFormView.Field> fields(CaseTongue tongue, CaseSent sent, Map<String, String> filled) {
        return FIELDS.stream()
                .map(field -> CaseForms.field(
                        tongue,
                        FORM,
                        field,
                        field.name().equals(HOLDER) ? "firstHolder" : field.name(),
                        sent,
                        filled,
                        field.name().equals(HOLDER) ? holders(tongue) : CaseForms.ofWords(tongue, field.values())))
                .toList();
    }

    private String mine() {
        return sight.viewer().memberId() == null ? "" : ME;
    }

    private List<CaseFormView.Option> holders(CaseTongue tongue) {
        List<CaseFormView.Option> options = new ArrayList<>();
        if (!mine().isEmpty()) {
            options.add(new CaseFormView.Option(ME, tongue.words().you()));
        }
        roster.listOrganisations(null)
                .forEach(one -> options.add(new CaseFormView.Option(one.id().toString(), one.name())));
        return options;
    }

    private UUID seenIncident(Map<String, String> typed) {
        String incident = typed.getOrDefault("incidentId", "");
        if (incident.isBlank()) {
            throw InvalidException.of(
                    "incident", "It is not said of which incident.", "an incident: a case begins with what happened");
        }
        UUID id = Paging.uuid("incident", incident);
        sight.requireSeen("incident", id);
        return id;
    }

    @Transactional
    UUID open(Map<String, String> typed) {
        seenIncident(typed);
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        for (CaseField field : FIELDS) {
            String told = typed.getOrDefault(field.path(), "").strip();
            if (!told.isEmpty() && !field.name().equals(HOLDER)) {
                field.put(body, told, pages.tongue().zone());
            }
        }
        holder(body, typed.getOrDefault(HOLDER, "").strip());
        kind(body);
        CaseEntries.CaseEntry entry = bodies.read(body, CaseEntries.CaseEntry.class);
        if (entry.attendanceId() != null) {
            sight.requireSeen("attendance", entry.attendanceId());
        }
        return cases.open(entry).id();
    }

    private void holder(ObjectNode body, String chosen) {
        UUID member = sight.viewer().memberId();
        if (chosen.equals(ME) && member != null) {
            body.putObject(HOLDER).put("memberId", member.toString());
        } else if (!chosen.isEmpty()) {
            body.putObject(HOLDER).put("organisationId", chosen);
        }
    }

    /** People say what they call it; the register has it by its scientific name. */
    private void kind(ObjectNode body) {
        JsonNode animal = body.get("animal");
        JsonNode said = animal == null ? null : animal.get("scientificName");
        if (said == null || !(animal instanceof ObjectNode told)) {
            throw InvalidException.of(
                    NAME, "It is not said what it is.", "a kind of the register, by its name or its scientific name");
        }
        String found = names.find(said.asText()).scientificName();
        if (found == null) {
            throw InvalidException.of(
                    NAME,
                    "No kind of the register is called so.",
                    "one of the list; where nobody knows yet, the kind that says so");
        }
        told.put("scientificName", found);
    }
}
