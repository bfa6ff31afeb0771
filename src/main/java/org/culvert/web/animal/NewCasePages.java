package org.culvert.web.animal;

import com.fasterxml.jackson.databind.JsonNode;
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
import java.util.TreeMap;
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
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.forms.FieldShape.Kind;
import org.culvert.web.forms.SentFields;

/** A case that is opened for an animal of an incident. */
@ApplicationScoped
class NewCasePages {
    static final String FORM = "new";
    private static final String ME = "me";
    private static final String HOLDER = "holder";
    private static final String NAME = "animal.scientificName";

    private static final List<FieldShape> FIELDS = List.of(
            FieldShape.of(Kind.hidden, "incidentId"),
            FieldShape.of(Kind.hidden, "attendanceId"),
            FieldShape.of(Kind.text, NAME).isNeeded(),
            FieldShape.choice(HOLDER),
            FieldShape.of(Kind.moment, "foundAt"),
            FieldShape.choice("animal.sex", CallEntry.Sex.values()),
            FieldShape.of(Kind.text, "animal.lifeStage"),
            FieldShape.of(Kind.lines, "animal.naturalMarks"),
            FieldShape.of(Kind.truth, "dependentYoung"),
            FieldShape.of(Kind.truth, "originUnknown"));

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
                .data("form", form(tongue, sent.isRefused() ? sent : filled(sent, told)))
                .data("key", UUID.randomUUID().toString());
    }

    /** With what is known of it before anybody types. */
    private CaseSent filled(CaseSent sent, List<String> told) {
        Map<String, String> filled = new TreeMap<>();
        sent.typed().told().forEach((name, texts) -> filled.put(name, texts.get(0)));
        filled.put(HOLDER, mine());
        if (told.size() == 1) {
            filled.put(NAME, told.get(0));
        }
        return new CaseSent(FORM, SentFields.of(filled), List.of());
    }

    private EntryForm form(CaseTongue tongue, CaseSent sent) {
        var form = new EntryForm(FORM, sent.typed(), sent.errors());
        for (FieldShape field : FIELDS) {
            boolean holds = field.name().equals(HOLDER);
            CaseForms.add(
                    form,
                    tongue,
                    field,
                    holds ? "firstHolder" : field.last(),
                    holds ? holders(tongue) : field.name().equals(NAME) ? kinds() : CaseForms.options(tongue, field));
        }
        return form;
    }

    private List<Option> kinds() {
        return names.list().stream().map(one -> new Option(one, "")).toList();
    }

    private String mine() {
        return sight.viewer().memberId() == null ? "" : ME;
    }

    private List<Option> holders(CaseTongue tongue) {
        List<Option> options = new ArrayList<>();
        if (!mine().isEmpty()) {
            options.add(new Option(ME, tongue.words().you()));
        }
        roster.listOrganisations(null)
                .forEach(one -> options.add(new Option(one.id().toString(), one.name())));
        return options;
    }

    private UUID seenIncident(SentFields typed) {
        String incident = typed.given("incidentId");
        if (incident == null) {
            throw InvalidException.of(
                    "incident", "It is not said of which incident.", "an incident: a case begins with what happened");
        }
        UUID id = Paging.uuid("incident", incident);
        sight.requireSeen("incident", id);
        return id;
    }

    @Transactional
    UUID open(SentFields typed) {
        seenIncident(typed);
        EntryBody body =
                EntryBody.of(FIELDS, typed, SentFields.NOTHING, pages.tongue().zone());
        holder(body.told());
        kind(body.told());
        CaseEntries.CaseEntry entry = body.read(bodies, CaseEntries.CaseEntry.class);
        if (entry.attendanceId() != null) {
            sight.requireSeen("attendance", entry.attendanceId());
        }
        return cases.open(entry).id();
    }

    private void holder(ObjectNode body) {
        JsonNode chosen = body.remove(HOLDER);
        UUID member = sight.viewer().memberId();
        if (chosen != null && chosen.asText().equals(ME) && member != null) {
            body.putObject(HOLDER).put("memberId", member.toString());
        } else if (chosen != null) {
            body.putObject(HOLDER).put("organisationId", chosen.asText());
        }
    }

    /** People say what they call it; the register has it by its scientific name. */
    private void kind(ObjectNode body) {
        if (body.get("animal") instanceof ObjectNode told && told.has("scientificName")) {
            String found = names.find(told.get("scientificName").asText()).scientificName();
            if (found == null) {
                throw InvalidException.of(
                        NAME,
                        "No kind of the register is called so.",
                        "one of the list; where nobody knows yet, the kind that says so");
            }
            told.put("scientificName", found);
        }
    }
}
