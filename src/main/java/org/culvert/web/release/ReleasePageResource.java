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
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseCorrections.Withdrawal;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.sight.Sight;
import org.culvert.release.PhotographService;
import org.culvert.release.PhotographService.PhotographEntry;
import org.culvert.release.ReleaseEntries.SupportFeedingEnd;
import org.culvert.release.ReleaseService;
import org.culvert.release.SightingService;
import org.culvert.release.SightingService.SightingEntry;
import org.culvert.web.Languages;
import org.culvert.web.PageForms;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentFile;
import org.culvert.web.forms.SentForm;
import org.culvert.web.words.FormsWords;
import org.culvert.web.words.ReleaseWords;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** Releases, for people: which there were, one that is recorded, and what is known since. */
@OwnForm
@Path("/releases")
@Produces(MediaType.TEXT_HTML)
public class ReleasePageResource {
    private static final int SHOWN = 20;
    private static final int DECISIONS_SHOWN = 30;
    private static final String PART = "(animal|photograph|sighting):[^:]+";

    private final Template list;
    private final Template one;
    private final Template anew;
    private final ReleasePages pages;
    private final NewReleasePages newPages;
    private final ReleaseService releases;
    private final SightingService sightings;
    private final PhotographService photographs;
    private final FormBodies bodies;
    private final PageForms taken;
    private final RegionService region;
    private final Languages languages;
    private final Sight sight;

    ReleasePageResource(
            @Location("releases.html") Template list,
            @Location("release.html") Template one,
            @Location("release-new.html") Template anew,
            ReleasePages pages,
            NewReleasePages newPages,
            ReleaseService releases,
            SightingService sightings,
            PhotographService photographs,
            FormBodies bodies,
            PageForms taken,
            RegionService region,
            Languages languages,
            Sight sight) {
        this.list = list;
        this.one = one;
        this.anew = anew;
        this.pages = pages;
        this.newPages = newPages;
        this.releases = releases;
        this.sightings = sightings;
        this.photographs = photographs;
        this.bodies = bodies;
        this.taken = taken;
        this.region = region;
        this.languages = languages;
        this.sight = sight;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response listReleases(@QueryParam("before") @Nullable String before) {
        Page<ReleasePage.Listed> found =
                pages.list(SHOWN, before == null || before.isBlank() ? null : Paging.uuid("before", before));
        return PageForms.html(
                200,
                list.data("releases", found.items())
                        .data("older", found.next())
                        .data("decides", sight.viewer().hasAny(Role.COORDINATOR, Role.OFFICER))
                        .data("decisions", pages.decisions(DECISIONS_SHOWN)));
    }

    /** @param assessmentIds by which it is to be recorded, one of each animal */
    @GET
    @Path("/new")
    @RolesAllowed(Role.COORDINATOR)
    public Response showNew(@QueryParam("assessmentId") List<String> assessmentIds) {
        return newPage(200, assessmentIds, PlanForms.Again.NONE);
    }

    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed(Role.COORDINATOR)
    public Response record(
            @BeanParam SentForm form,
            @RestForm("permitFile") @Nullable FileUpload permitFile,
            @FormParam("csrf") @Nullable String csrf) {
        SentFields sent = form.fields();
        SentFile permit = SentFile.chosen(permitFile);
        return taken.once(
                "/releases",
                form.key(),
                List.of(sent, SentFile.told(permit)),
                () -> URI.create("/releases/" + newPages.record(sent, permit).id()),
                (why, errors) -> newPage(
                        why.status(), sent.texts("assessmentIds"), new PlanForms.Again("release", sent, errors)));
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response show(@PathParam("id") String id) {
        return page(200, Paging.uuid("id", id), PlanForms.Again.NONE);
    }

    @POST
    @Path("/{id}/sightings")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public Response addSighting(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        UUID release = seen(id);
        SentFields sent = form.fields();
        return taken.once(
                "/releases/" + release + "/sightings",
                form.key(),
                sent,
                () -> {
                    EntryForm read = ReleaseForms.sighting(sent("sighting", sent), words(), usual(), List.of());
                    sightings.record(release, read.read(zone()).read(bodies, SightingEntry.class));
                    return URI.create("/releases/" + release + "#sightings");
                },
                again(release, "sighting", sent));
    }

    @POST
    @Path("/{id}/support-feeding-end")
    @RolesAllowed({Role.COORDINATOR, Role.CARER})
    public Response endFeeding(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        UUID release = seen(id);
        SentFields sent = form.fields();
        return taken.once(
                "/releases/" + release + "/support-feeding-end",
                form.key(),
                sent,
                () -> {
                    EntryForm read = ReleaseForms.feeding(sent("feeding", sent), words(), usual());
                    releases.endSupportFeeding(release, read.read(zone()).read(bodies, SupportFeedingEnd.class));
                    return URI.create("/releases/" + release);
                },
                again(release, "feeding", sent));
    }

    @POST
    @Path("/{id}/photographs")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public Response addPhotograph(
            @PathParam("id") String id,
            @RestForm("picture") @Nullable FileUpload picture,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        UUID release = seen(id);
        SentFields sent = form.fields();
        SentFile file = SentFile.chosen(picture);
        return taken.once(
                "/releases/" + release + "/photographs",
                form.key(),
                List.of(sent, SentFile.told(file)),
                () -> {
                    EntryBody body = ReleaseForms.photograph(
                                    PlanForms.Again.read("photograph", sent)
                                            .of("photograph", ReleaseForms::besidePhotograph),
                                    words())
                            .read(zone());
                    byte[] content = body.tried(() -> SentFile.content("picture", file, SentFile.Taken.PICTURE));
                    if (content != null && file != null) {
                        body.told().put("mediaType", file.mediaType()).put("content", content);
                    }
                    photographs.add(release, body.read(bodies, PhotographEntry.class));
                    return URI.create("/releases/" + release + "#photographs");
                },
                again(release, "photograph", sent));
    }

    /** Takes back that an animal was let go, a photograph or a sighting. */
    @POST
    @Path("/{id}/withdrawals")
    @RolesAllowed(Role.COORDINATOR)
    public Response takeBack(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        UUID release = seen(id);
        SentFields sent = form.fields();
        return taken.once(
                "/releases/" + release + "/withdrawals",
                form.key(),
                sent,
                () -> {
                    EntryBody body = ReleaseForms.withdrawal(sent("withdrawal", sent), words(), usual(), List.of())
                            .read(zone());
                    String part = body.take("part");
                    if (part != null && !part.matches(PART)) {
                        body.refuse("part", "It is not said what is taken back.", "one of the list");
                    }
                    Withdrawal why = body.read(bodies, Withdrawal.class);
                    takeBack(release, String.valueOf(part), why.reason());
                    return URI.create("/releases/" + release);
                },
                again(release, "withdrawal", sent));
    }

    private void takeBack(UUID release, String part, String reason) {
        int colon = part.indexOf(':');
        UUID of = Paging.uuid("part", part.substring(colon + 1));
        switch (part.substring(0, colon)) {
            case "animal" -> releases.withdraw(release, of, reason);
            case "photograph" -> photographs.withdraw(release, of, reason);
            default -> sightings.withdraw(release, of, reason);
        }
    }

    private UUID seen(String id) {
        UUID release = Paging.uuid("id", id);
        sight.requireSeen("release", release);
        return release;
    }

    private ReleaseWords words() {
        return languages.words(ReleaseWords.class);
    }

    private FormsWords usual() {
        return languages.words(FormsWords.class);
    }

    private ZoneId zone() {
        return region.zone();
    }

    private static EntryForm sent(String name, SentFields sent) {
        return new EntryForm(name, sent, List.<FieldError>of());
    }

    private PageForms.Again again(UUID release, String form, SentFields sent) {
        return (why, errors) -> page(why.status(), release, new PlanForms.Again(form, sent, errors));
    }

    private Response newPage(int status, List<String> assessmentIds, PlanForms.Again again) {
        return PageForms.html(
                status,
                anew.data("page", newPages.page(assessmentIds, again))
                        .data("key", UUID.randomUUID().toString()));
    }

    private Response page(int status, UUID id, PlanForms.Again again) {
        return PageForms.html(
                status,
                one.data("page", pages.page(id, again))
                        .data("key", UUID.randomUUID().toString()));
    }
}
