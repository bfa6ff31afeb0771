package org.culvert.web.hand;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import org.culvert.animal.CaseEntries;
import org.culvert.care.plan.PlanEntries;
import org.culvert.dispatch.DispatchService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.roster.Holder;
import org.culvert.web.CareForm;
import org.culvert.web.SceneForm;
import org.culvert.web.Typed;
import org.culvert.web.forms.PictureForm;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** The forms of the pages of rescuers and carers, where no script takes them over. */
@OwnForm
@Path("/hand")
@Produces(MediaType.TEXT_HTML)
public class HandFormResource {
    private final HandAnswers answers;
    private final HandReader reader;
    private final HandActs acts;
    private final RegionService region;

    HandFormResource(HandAnswers answers, HandReader reader, HandActs acts, RegionService region) {
        this.answers = answers;
        this.reader = reader;
        this.acts = acts;
        this.region = region;
    }

    /** A task that was done or not, or something seen beside the plan. */
    @POST
    @Path("/entries")
    @RolesAllowed({Role.CARER, Role.COORDINATOR})
    public Response enter(
            @BeanParam CareForm form, @FormParam("csrf") @Nullable String csrf, @Context HttpHeaders headers) {
        UUID animal = form.animal();
        Function<Sent, Response> again = form.isOfTask() ? answers.list(headers) : answers.animal(animal, headers);
        URI next = URI.create(form.isOfTask() ? "/hand" : "/hand/animals/" + animal);
        PlanEntries.CareEntryEntry entry;
        try {
            entry = form.entry(region.zone());
        } catch (InvalidException e) {
            return answers.again(e, new HandAnswers.Typed(form.name(), form.typed()), again);
        }
        return answers.once(
                "/hand/entries/" + animal,
                form.key(),
                entry,
                () -> acts.enter(animal, entry),
                next,
                new HandAnswers.Typed(form.name(), form.typed()),
                again);
    }

    @POST
    @Path("/attendances/{id}/steps")
    @RolesAllowed({Role.RESCUER, Role.COORDINATOR})
    public Response step(
            @PathParam("id") String id,
            @FormParam("act") @Nullable String act,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf,
            @Context HttpHeaders headers) {
        UUID attendance = Paging.uuid("id", id);
        return answers.once(
                "/hand/attendances/" + attendance + "/steps",
                key,
                new HandAnswers.Told(String.valueOf(act)),
                () -> acts.step(attendance, act),
                URI.create("/hand/attendances/" + attendance),
                new HandAnswers.Typed("a-" + attendance, Map.of()),
                answers.outing(attendance, headers));
    }

    @POST
    @Path("/attendances/{id}/outcome")
    @RolesAllowed({Role.RESCUER, Role.COORDINATOR})
    public Response end(
            @PathParam("id") String id,
            @BeanParam SceneForm form,
            @FormParam("csrf") @Nullable String csrf,
            @Context HttpHeaders headers) {
        UUID attendance = Paging.uuid("id", id);
        var typed = new HandAnswers.Typed("s-" + attendance, form.typed());
        DispatchService.OutcomeEntry entry;
        try {
            entry = form.entry();
        } catch (InvalidException e) {
            return answers.again(e, typed, answers.outing(attendance, headers));
        }
        return answers.once(
                "/hand/attendances/" + attendance + "/outcome",
                form.key,
                entry,
                () -> acts.end(attendance, entry),
                URI.create("/hand/attendances/" + attendance),
                typed,
                answers.outing(attendance, headers));
    }

    /** A photograph of the incident to which a going-out goes. */
    @POST
    @Path("/attendances/{id}/photographs")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed({Role.RESCUER, Role.CARER, Role.COORDINATOR})
    public Response addToIncident(
            @PathParam("id") String id,
            @RestForm("picture") @Nullable FileUpload picture,
            @FormParam("caption") @Nullable String caption,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf,
            @Context HttpHeaders headers) {
        UUID attendance = Paging.uuid("id", id);
        return photograph(
                "/hand/attendances/" + attendance + "/photographs",
                picture,
                caption,
                key,
                sent -> acts.addToIncident(attendance, sent.picture()),
                URI.create("/hand/attendances/" + attendance),
                "p-" + attendance,
                answers.outing(attendance, headers));
    }

    @POST
    @Path("/animals/{id}/photographs")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed({Role.RESCUER, Role.CARER, Role.COORDINATOR})
    public Response addToCase(
            @PathParam("id") String id,
            @RestForm("picture") @Nullable FileUpload picture,
            @FormParam("caption") @Nullable String caption,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf,
            @Context HttpHeaders headers) {
        UUID animal = Paging.uuid("id", id);
        return photograph(
                "/hand/animals/" + animal + "/photographs",
                picture,
                caption,
                key,
                sent -> acts.addToCase(animal, sent.picture()),
                URI.create("/hand/animals/" + animal),
                "p-" + animal,
                answers.animal(animal, headers));
    }

    /** The taker has the animal, or does not take it. */
    @POST
    @Path("/hand-overs/{id}")
    @RolesAllowed({Role.RESCUER, Role.CARER, Role.COORDINATOR})
    public Response settle(
            @PathParam("id") String id,
            @FormParam("act") @Nullable String act,
            @FormParam("reason") @Nullable String reason,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf,
            @Context HttpHeaders headers) {
        UUID handOver = Paging.uuid("id", id);
        String why = Typed.given(reason);
        return answers.once(
                "/hand/hand-overs/" + handOver,
                key,
                new HandAnswers.Told(act + " " + why),
                () -> {
                    if (Objects.equals(act, "take")) {
                        acts.take(handOver);
                    } else if (why == null) {
                        throw InvalidException.of("reason", "It does not say why.", "some words");
                    } else {
                        acts.refuse(handOver, why);
                    }
                },
                URI.create("/hand"),
                new HandAnswers.Typed("h-" + handOver, Map.of("reason", Objects.requireNonNullElse(reason, ""))),
                answers.list(headers));
    }

    /** Offers an animal to an organisation, or to a member by call sign. */
    @POST
    @Path("/animals/{id}/hand-overs")
    @RolesAllowed({Role.RESCUER, Role.CARER, Role.COORDINATOR})
    public Response offer(
            @PathParam("id") String id,
            @FormParam("organisationId") @Nullable String organisationId,
            @FormParam("callSign") @Nullable String callSign,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf,
            @Context HttpHeaders headers) {
        UUID animal = Paging.uuid("id", id);
        boolean byName = callSign != null;
        return answers.once(
                "/hand/animals/" + animal + "/hand-overs",
                key,
                new HandAnswers.Told(organisationId + " " + callSign),
                () -> acts.offer(
                        animal,
                        new CaseEntries.HandOverEntry(
                                callSign == null ? organisation(organisationId) : member(callSign), null)),
                URI.create("/hand/animals/" + animal),
                new HandAnswers.Typed(
                        (byName ? "n-" : "g-") + animal,
                        Map.of(
                                "organisationId", Objects.requireNonNullElse(organisationId, ""),
                                "callSign", Objects.requireNonNullElse(callSign, ""))),
                answers.animal(animal, headers));
    }

    private Holder member(String callSign) {
        String given = Typed.given(callSign);
        UUID found = given == null ? null : reader.findByCallSign(given);
        if (found == null) {
            throw InvalidException.of(
                    "callSign", "Nobody of the network has that call sign.", "a call sign, exactly as it is written");
        }
        return Holder.member(found);
    }

    private static Holder organisation(@Nullable String id) {
        String given = Typed.given(id);
        if (given == null) {
            throw InvalidException.of("organisationId", "It is not said to whom.", "one of the list");
        }
        return Holder.organisation(Paging.uuid("organisationId", given));
    }

    private interface TakesPicture {
        void take(PictureForm sent);
    }

    private Response photograph(
            String path,
            @Nullable FileUpload upload,
            @Nullable String caption,
            @Nullable String key,
            TakesPicture change,
            URI next,
            String form,
            Function<Sent, Response> again) {
        var typed = new HandAnswers.Typed(form, Map.of("caption", Objects.requireNonNullElse(caption, "")));
        PictureForm sent;
        try {
            sent = PictureForm.read(upload, caption);
        } catch (InvalidException e) {
            return answers.again(e, typed, again);
        }
        return answers.once(
                path,
                key,
                new HandAnswers.Told(sent.sha256() + " " + caption),
                () -> change.take(sent),
                next,
                typed,
                again);
    }
}
