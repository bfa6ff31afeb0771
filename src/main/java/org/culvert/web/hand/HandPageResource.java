package org.culvert.web.hand;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.account.PageFrame;

/** What rescuers and carers have to do, for a telephone. */
@OwnForm
@Path("/hand")
@Produces(MediaType.TEXT_HTML)
public class HandPageResource {
    /**
     * Who is signed in on this browser now, so that what waits on it is sent as nobody else.
     *
     * @param formSecret what changes of this session carry
     * @param now the server's clock, by which a telephone's is set right
     */
    public record HandStandingView(UUID accountId, String formSecret, Instant now) {}

    private final Template offline;
    private final HandAnswers answers;
    private final PageFrame frame;
    private final Clock clock;

    HandPageResource(
            @Location("hand-offline.html") Template offline, HandAnswers answers, PageFrame frame, Clock clock) {
        this.offline = offline;
        this.answers = answers;
        this.frame = frame;
        this.clock = clock;
    }

    @GET
    @RolesAllowed({Role.RESCUER, Role.CARER, Role.COORDINATOR})
    public Response show(@Context HttpHeaders headers) {
        return answers.list(headers).apply(Sent.NOTHING);
    }

    @GET
    @Path("/standing")
    @Produces(MediaType.APPLICATION_JSON)
    @RolesAllowed({Role.RESCUER, Role.CARER, Role.COORDINATOR})
    public HandStandingView standing() {
        return new HandStandingView(
                Objects.requireNonNull(frame.accountId(), "whoever has a role has an account"),
                frame.getCsrf(),
                clock.instant());
    }

    /** What a browser keeps to show without a signal, where it has nothing else. */
    @GET
    @PermitAll
    @Path("/offline")
    public TemplateInstance showOffline(@Context HttpHeaders headers) {
        return answers.tongue(headers).speak(offline.data("signedOut", false));
    }

    /** What a browser keeps to show when somebody signs out without a signal. */
    @GET
    @PermitAll
    @Path("/signed-out")
    public TemplateInstance showSignedOut(@Context HttpHeaders headers) {
        return answers.tongue(headers).speak(offline.data("signedOut", true));
    }

    @GET
    @Path("/attendances/{id}")
    @RolesAllowed({Role.RESCUER, Role.CARER, Role.COORDINATOR})
    public Response showOuting(@PathParam("id") String id, @Context HttpHeaders headers) {
        return answers.outing(Paging.uuid("id", id), headers).apply(Sent.NOTHING);
    }

    @GET
    @Path("/animals/{id}")
    @RolesAllowed({Role.RESCUER, Role.CARER, Role.COORDINATOR})
    public Response showAnimal(@PathParam("id") String id, @Context HttpHeaders headers) {
        return answers.animal(Paging.uuid("id", id), headers).apply(Sent.NOTHING);
    }
}
