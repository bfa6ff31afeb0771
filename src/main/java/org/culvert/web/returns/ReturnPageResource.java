package org.culvert.web.returns;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
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
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.exchange.annualreturn.AnnualReturnService;
import org.culvert.exchange.annualreturn.SupplementService;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.sight.Sight;
import org.culvert.web.PageForms;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** Annual returns: what was signed, a draft with its doubts, signing it, and supplements to what changed since. */
@OwnForm
@Path("/returns")
@Produces(MediaType.TEXT_HTML)
public class ReturnPageResource {
    private final ReturnPages pages;
    private final AnnualReturnService returns;
    private final SupplementService supplements;
    private final FormBodies bodies;
    private final PageForms forms;
    private final Sight sight;

    ReturnPageResource(
            ReturnPages pages,
            AnnualReturnService returns,
            SupplementService supplements,
            FormBodies bodies,
            PageForms forms,
            Sight sight) {
        this.pages = pages;
        this.returns = returns;
        this.supplements = supplements;
        this.bodies = bodies;
        this.forms = forms;
        this.sight = sight;
    }

    @GET
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public TemplateInstance show(@QueryParam("cursor") @Nullable String cursor) {
        return pages.list(Paging.cursor(cursor));
    }

    /**
     * A return as it would be signed now.
     *
     * @param period identifier of a form, a colon, and the first day
     * @param holder {@code member:} or {@code organisation:} and an identifier
     */
    @GET
    @Path("/draft")
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public TemplateInstance showDraft(
            @QueryParam("period") @Nullable String period, @QueryParam("holder") @Nullable String holder) {
        Asked asked = Asked.of(period, holder);
        return pages.draft(asked.form(), asked.from(), asked.holder(), null, List.of());
    }

    /** Freezes a return as it stands. */
    @POST
    @Path("/signing")
    @RolesAllowed({Role.CARER, Role.COORDINATOR})
    public Response sign(
            @FormParam("period") @Nullable String period,
            @FormParam("holder") @Nullable String holder,
            @FormParam("name") @Nullable String name,
            @FormParam("capacity") @Nullable String capacity,
            @FormParam("signedOn") @Nullable String signedOn,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        Asked asked = Asked.of(period, holder);
        var typed = new ReturnPages.Typed(text(name), text(capacity), text(signedOn), "");
        ObjectNode told = told(typed);
        told.put("formId", asked.form().toString()).put("from", asked.from().toString());
        put(told, "memberId", ReturnHolders.idOf("member", asked.holder()));
        put(told, "organisationId", ReturnHolders.idOf("organisation", asked.holder()));
        return forms.once(
                "/returns/signing",
                key,
                told.toString(),
                () -> one(returns.sign(bodies.read(told, AnnualReturnService.SigningEntry.class))
                        .id()),
                (why, errors) -> PageForms.html(
                        why.status(), pages.draft(asked.form(), asked.from(), asked.holder(), typed, errors)));
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public TemplateInstance showOne(@PathParam("id") String id) {
        return pages.one(seen(id), null, List.of());
    }

    /** Freezes what changed since a return, or its last supplement, was signed. */
    @POST
    @Path("/{id}/supplements")
    @RolesAllowed({Role.CARER, Role.COORDINATOR})
    public Response signSupplement(
            @PathParam("id") String id,
            @FormParam("reason") @Nullable String reason,
            @FormParam("name") @Nullable String name,
            @FormParam("capacity") @Nullable String capacity,
            @FormParam("signedOn") @Nullable String signedOn,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID of = seen(id);
        var typed = new ReturnPages.Typed(text(name), text(capacity), text(signedOn), text(reason));
        ObjectNode told = told(typed);
        return forms.once(
                "/returns/" + of + "/supplements",
                key,
                told.toString(),
                () -> {
                    supplements.sign(of, bodies.read(told, SupplementService.SupplementEntry.class));
                    return one(of);
                },
                (why, errors) -> PageForms.html(why.status(), pages.one(of, typed, errors)));
    }

    private UUID seen(String id) {
        UUID signed = Paging.uuid("id", id);
        sight.requireSeen("annual-return", signed);
        return signed;
    }

    /** What a draft is asked of. */
    private record Asked(UUID form, LocalDate from, String holder) {
        static Asked of(@Nullable String period, @Nullable String holder) {
            int colon = period == null ? -1 : period.indexOf(':');
            if (period == null || colon < 0) {
                throw InvalidException.of(
                        "period", "No period was chosen.", "the identifier of a form, a colon, and its first day");
            }
            return new Asked(
                    Paging.uuid("period", period.substring(0, colon)),
                    Paging.day("period", period.substring(colon + 1)),
                    holder == null ? "" : holder);
        }
    }

    private static ObjectNode told(ReturnPages.Typed typed) {
        ObjectNode told = JsonNodeFactory.instance.objectNode();
        put(told, "name", typed.name());
        put(told, "capacity", typed.capacity());
        put(told, "signedOn", typed.signedOn());
        put(told, "reason", typed.reason());
        return told;
    }

    private static void put(ObjectNode told, String field, @Nullable Object value) {
        if (value != null && !value.toString().isEmpty()) {
            told.put(field, value.toString());
        }
    }

    private static String text(@Nullable String typed) {
        String given = Typed.given(typed);
        return given == null ? "" : given;
    }

    private static URI one(UUID id) {
        return URI.create("/returns/" + id);
    }
}
