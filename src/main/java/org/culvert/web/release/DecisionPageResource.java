package org.culvert.web.release;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseCorrections.Withdrawal;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.sight.Sight;
import org.culvert.release.nonrelease.NonReleaseEntries.AuthorityNoticeEntry;
import org.culvert.release.nonrelease.NonReleaseEntries.OutcomeEntry;
import org.culvert.release.nonrelease.NonReleaseEntries.PermitToKeepEntry;
import org.culvert.release.nonrelease.NonReleaseEntries.SecondOpinionEntry;
import org.culvert.release.nonrelease.NonReleaseEntries.WelfareReviewEntry;
import org.culvert.release.nonrelease.NonReleaseService;
import org.culvert.web.PageForms;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentFile;
import org.culvert.web.forms.SentForm;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** A decision that an animal does not go back, for people: what came of it, and forms for that. */
@OwnForm
@Path("/non-release-decisions/{id}")
@Produces(MediaType.TEXT_HTML)
public class DecisionPageResource {
    private final Template template;
    private final DecisionPages pages;
    private final NonReleaseService decisions;
    private final FormBodies bodies;
    private final PageForms taken;
    private final RegionService region;
    private final Sight sight;

    DecisionPageResource(
            @Location("non-release.html") Template template,
            DecisionPages pages,
            NonReleaseService decisions,
            FormBodies bodies,
            PageForms taken,
            RegionService region,
            Sight sight) {
        this.template = template;
        this.pages = pages;
        this.decisions = decisions;
        this.bodies = bodies;
        this.taken = taken;
        this.region = region;
        this.sight = sight;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response show(@PathParam("id") String id) {
        return page(200, Paging.uuid("id", id), PlanForms.Again.NONE);
    }

    /** A second opinion, a review, an outcome, or the withdrawal of the decision. */
    @POST
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public Response enter(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        UUID decision = seen(id);
        SentFields sent = form.fields();
        String what = sent.text("what");
        return taken.once(
                "/non-release-decisions/" + decision,
                form.key(),
                sent,
                () -> {
                    EntryBody body = pages.sent(what, sent).read(region.zone());
                    switch (what) {
                        case "opinion" -> decisions.addOpinion(decision, body.read(bodies, SecondOpinionEntry.class));
                        case "review" -> decisions.addReview(decision, body.read(bodies, WelfareReviewEntry.class));
                        case "outcome" -> decisions.addOutcome(decision, body.read(bodies, OutcomeEntry.class));
                        case "withdrawal" -> decisions.withdraw(decision, reason(body));
                        default -> throw unknown();
                    }
                    return to(decision);
                },
                again(decision, what, sent));
    }

    /** That an authority was told, or that one thing that came of the decision is taken back. */
    @POST
    @Path("/notices")
    @RolesAllowed(Role.COORDINATOR)
    public Response tell(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        UUID decision = seen(id);
        SentFields sent = form.fields();
        String what = sent.text("what");
        return taken.once(
                "/non-release-decisions/" + decision + "/notices",
                form.key(),
                sent,
                () -> {
                    EntryBody body = pages.sent(what, sent).read(region.zone());
                    switch (what) {
                        case "notice" -> decisions.addNotice(decision, body.read(bodies, AuthorityNoticeEntry.class));
                        case "part" -> {
                            UUID part = body.takeId("part");
                            String reason = reason(body);
                            decisions.withdrawPart(decision, Objects.requireNonNull(part), reason);
                        }
                        default -> throw unknown();
                    }
                    return to(decision);
                },
                again(decision, what, sent));
    }

    /** A permit to keep the animal, with its document. */
    @POST
    @Path("/permits")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed(Role.COORDINATOR)
    public Response addPermit(
            @PathParam("id") String id,
            @RestForm("document") @Nullable FileUpload document,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        UUID decision = seen(id);
        SentFields sent = form.fields();
        SentFile file = SentFile.chosen(document);
        return taken.once(
                "/non-release-decisions/" + decision + "/permits",
                form.key(),
                List.of(sent, SentFile.told(file)),
                () -> {
                    EntryBody body = pages.sent("permit", sent).read(region.zone());
                    byte[] content = body.tried(() -> SentFile.content("document", file, SentFile.Taken.DOCUMENT));
                    if (content != null && file != null) {
                        body.told()
                                .put("documentName", file.shortName())
                                .put("documentMediaType", file.mediaType())
                                .put("document", content);
                    }
                    decisions.addPermit(decision, body.read(bodies, PermitToKeepEntry.class));
                    return to(decision);
                },
                again(decision, "permit", sent));
    }

    private String reason(EntryBody body) {
        return body.read(bodies, Withdrawal.class).reason();
    }

    private UUID seen(String id) {
        UUID decision = Paging.uuid("id", id);
        sight.requireSeen("non-release", decision);
        return decision;
    }

    private static InvalidException unknown() {
        return InvalidException.of("what", "It is not said what this is.", "a form of the page");
    }

    private static URI to(UUID decision) {
        return URI.create("/non-release-decisions/" + decision);
    }

    private PageForms.Again again(UUID decision, String what, SentFields sent) {
        return (why, errors) -> page(why.status(), decision, new PlanForms.Again(what, sent, errors));
    }

    private Response page(int status, UUID id, PlanForms.Again again) {
        return PageForms.html(
                status,
                template.data("page", pages.page(id, again))
                        .data("key", UUID.randomUUID().toString()));
    }
}
