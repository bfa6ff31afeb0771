package org.culvert.web.care;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.care.calendar.CalendarService;
import org.culvert.care.day.CareDayService;
import org.culvert.care.day.CareDayView;
import org.culvert.care.plan.CareEntryService;
import org.culvert.care.plan.PlanEntries;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.sight.Sight;
import org.culvert.web.CareForm;
import org.culvert.web.Languages;
import org.culvert.web.PageForms;
import org.culvert.web.Typed;
import org.culvert.web.kept.NamedRecords;
import org.culvert.web.words.CareDayWords;
import org.jspecify.annotations.Nullable;

/**
 * A member's day of care, for whoever looks after the carers: what is due and what was done, and entries for what a carer rings
 * in about. Carers tick on their own page, and have the address of their calendar here.
 */
@OwnForm
@Path("/care-day")
@Produces(MediaType.TEXT_HTML)
public class CareDayPageResource {
    private static final List<String> KINDS = List.of("note", "weight", "food", "wound", "photograph");

    private final Template template;
    private final CareDayService days;
    private final CareEntryService entries;
    private final PageForms taken;
    private final CalendarService calendars;
    private final RegionService region;
    private final Languages languages;
    private final NamedRecords named;
    private final Sight sight;

    CareDayPageResource(
            @Location("care-day.html") Template template,
            CareDayService days,
            CareEntryService entries,
            PageForms taken,
            CalendarService calendars,
            RegionService region,
            Languages languages,
            NamedRecords named,
            Sight sight) {
        this.template = template;
        this.days = days;
        this.entries = entries;
        this.taken = taken;
        this.calendars = calendars;
        this.region = region;
        this.languages = languages;
        this.named = named;
        this.sight = sight;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public Response show(@QueryParam("member") @Nullable String member, @QueryParam("date") @Nullable String date) {
        return page(200, member, date, null, List.of(), null);
    }

    /** Keeps what a carer told of, by whoever was told. */
    @POST
    @Path("/entries")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public Response enter(
            @BeanParam CareForm form,
            @FormParam("member") @Nullable String member,
            @FormParam("date") @Nullable String date,
            @FormParam("csrf") @Nullable String csrf) {
        PageForms.Again again = (why, errors) -> page(why.status(), member, date, form, errors, null);
        return taken.tried(
                () -> {
                    UUID animal = form.animal();
                    sight.requireSeen("case", animal);
                    PlanEntries.CareEntryEntry entry = form.entry(region.zone());
                    String shown = (member(member) == null ? "" : "&member=" + member(member))
                            + (date(date) == null ? "" : "&date=" + date(date));
                    URI next = URI.create("/care-day" + shown.replaceFirst("^&", "?") + "#animal-" + animal);
                    return taken.take("/care-day/entries/" + animal, form.key(), entry, () -> {
                        entries.add(animal, entry);
                        return next;
                    });
                },
                again);
    }

    /** Makes the address of the member's calendar, and shows it this once. */
    @POST
    @Path("/calendar")
    @RolesAllowed({Role.COORDINATOR, Role.CARER})
    public Response makeCalendar(
            @FormParam("member") @Nullable String member,
            @FormParam("csrf") @Nullable String csrf,
            @Context UriInfo asked) {
        UUID own = requireMember(member);
        try {
            String address = calendars.make(own).address();
            return page(
                    200,
                    member,
                    null,
                    null,
                    List.of(),
                    asked.getBaseUri().resolve(address).toString());
        } catch (ConflictException e) {
            return page(e.status(), member, null, null, taken.wrong(e), null);
        }
    }

    @POST
    @Path("/calendar/{id}/revocation")
    @RolesAllowed({Role.COORDINATOR, Role.CARER})
    public Response revokeCalendar(
            @PathParam("id") String id,
            @FormParam("member") @Nullable String member,
            @FormParam("csrf") @Nullable String csrf) {
        UUID asked = member(member);
        calendars.revoke(requireMember(member), Paging.uuid("id", id));
        return Response.seeOther(URI.create("/care-day" + (asked == null ? "" : "?member=" + asked) + "#calendar"))
                .build();
    }

    private UUID requireMember(@Nullable String member) {
        UUID asked = member(member) == null ? days.findOwnMember().orElse(null) : member(member);
        if (asked == null) {
            throw InvalidException.of("member", "This account is no member's.", "a member of the page");
        }
        return asked;
    }

    private static @Nullable UUID member(@Nullable String member) {
        String given = Typed.given(member);
        return given == null ? null : Paging.uuid("member", given);
    }

    private static @Nullable LocalDate date(@Nullable String date) {
        String given = Typed.given(date);
        return given == null ? null : Paging.day("date", given);
    }

    private Response page(
            int status,
            @Nullable String member,
            @Nullable String date,
            @Nullable CareForm sent,
            List<FieldError> errors,
            @Nullable String address) {
        UUID asked = member(member) == null ? days.findOwnMember().orElse(null) : member(member);
        LocalDate day = date(date);
        boolean own = days.findOwnMember().filter(one -> one.equals(asked)).isPresent();
        CareDayView told = asked == null ? null : days.getDay(asked, day);
        CareDayPage page = told == null
                ? null
                : new CareDayPage.Teller(
                                languages.words(CareDayWords.class),
                                languages.ofPage(),
                                region.zone(),
                                days.today(),
                                named.newestPhotographs(told.animals().stream()
                                        .map(CareDayView.HeldAnimalView::id)
                                        .collect(Collectors.toSet())),
                                sent,
                                errors)
                        .tell(told, !own && sight.sees("care-day", "callSign"));
        boolean keeps = asked != null && (chooses() || own);
        return PageForms.html(
                status,
                template.data("page", page)
                        .data("errors", errors)
                        .data("member", member(member))
                        .data("kinds", KINDS)
                        .data("keeps", keeps)
                        .data("enters", sight.viewer().hasAny(Role.COORDINATOR, Role.CLINIC))
                        .data("calendar", keeps ? findCalendar(asked) : null)
                        .data("address", address)
                        .data(
                                "members",
                                sight.viewer().hasAny(Role.COORDINATOR, Role.CLINIC) ? days.listHolders() : List.of()));
    }

    private boolean chooses() {
        return sight.viewer().hasAny(Role.COORDINATOR);
    }

    private CalendarService.@Nullable CareCalendarView findCalendar(@Nullable UUID member) {
        return member == null
                ? null
                : calendars.listCalendars(member).stream()
                        .filter(one -> one.revokedAt() == null)
                        .findFirst()
                        .orElse(null);
    }
}
