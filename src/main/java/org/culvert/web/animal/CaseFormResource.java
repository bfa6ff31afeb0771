package org.culvert.web.animal;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.web.forms.SentForm;
import org.jspecify.annotations.Nullable;

/** The forms of a case. */
@OwnForm
@Path("/cases")
@Produces(MediaType.TEXT_HTML)
public class CaseFormResource {
    private final CaseAnswers answers;

    CaseFormResource(CaseAnswers answers) {
        this.answers = answers;
    }

    /** It came to a clinic, alive or as a body. */
    @POST
    @Path("/{id}/visits")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR})
    public Response keepVisit(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.visit, form);
    }

    @POST
    @Path("/{id}/visits/{visitId}/findings")
    @RolesAllowed(Role.CLINIC)
    public Response addFinding(
            @PathParam("id") String id,
            @PathParam("visitId") String visitId,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.finding, visitId, form);
    }

    @POST
    @Path("/{id}/visits/{visitId}/readings")
    @RolesAllowed(Role.CLINIC)
    public Response addReading(
            @PathParam("id") String id,
            @PathParam("visitId") String visitId,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.reading, visitId, form);
    }

    @POST
    @Path("/{id}/visits/{visitId}/procedures")
    @RolesAllowed(Role.CLINIC)
    public Response addProcedure(
            @PathParam("id") String id,
            @PathParam("visitId") String visitId,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.procedure, visitId, form);
    }

    /** A vet's order, in the vet's own words. */
    @POST
    @Path("/{id}/visits/{visitId}/drug-orders")
    @RolesAllowed(Role.CLINIC)
    public Response orderDrug(
            @PathParam("id") String id,
            @PathParam("visitId") String visitId,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.drugOrder, visitId, form);
    }

    @POST
    @Path("/{id}/visits/{visitId}/discharge")
    @RolesAllowed(Role.CLINIC)
    public Response discharge(
            @PathParam("id") String id,
            @PathParam("visitId") String visitId,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.discharge, visitId, form);
    }

    /** A plan, of a template that a vet has adopted. */
    @POST
    @Path("/{id}/aftercare-plans")
    @RolesAllowed(Role.CLINIC)
    public Response makePlan(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.plan, form);
    }

    @POST
    @Path("/{id}/body-measurements")
    @RolesAllowed({Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public Response measure(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.measurement, form);
    }

    @POST
    @Path("/{id}/whereabouts")
    @RolesAllowed({Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public Response move(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.whereabouts, form);
    }

    @POST
    @Path("/{id}/hand-overs")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public Response offer(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.handOver, form);
    }

    @POST
    @Path("/{id}/hand-overs/{handOverId}/acceptance")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public Response accept(
            @PathParam("id") String id,
            @PathParam("handOverId") String handOverId,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.acceptance, handOverId, form);
    }

    @POST
    @Path("/{id}/hand-overs/{handOverId}/refusal")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public Response refuse(
            @PathParam("id") String id,
            @PathParam("handOverId") String handOverId,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.refusal, handOverId, form);
    }

    @POST
    @Path("/{id}/placements")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR})
    public Response place(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.placement, form);
    }

    @POST
    @Path("/{id}/holds")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public Response setHold(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.hold, form);
    }

    @POST
    @Path("/{id}/holds/{holdId}/clearing")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR})
    public Response clearHold(
            @PathParam("id") String id,
            @PathParam("holdId") String holdId,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.clearing, holdId, form);
    }

    @POST
    @Path("/{id}/disease-suspicions")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public Response suspect(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.suspicion, form);
    }

    @POST
    @Path("/{id}/disease-suspicions/{suspicionId}/telling")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public Response tellAuthority(
            @PathParam("id") String id,
            @PathParam("suspicionId") String suspicionId,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.telling, suspicionId, form);
    }

    @POST
    @Path("/{id}/fitness-checks")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR})
    public Response signFit(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.fitness, form);
    }

    @POST
    @Path("/{id}/fate")
    @RolesAllowed({Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public Response end(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.fate, form);
    }

    @POST
    @Path("/{id}/body/disposal")
    @RolesAllowed({Role.RESCUER, Role.CLINIC, Role.COORDINATOR})
    public Response dispose(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        return answers.take(id, CaseFormKind.disposal, form);
    }
}
