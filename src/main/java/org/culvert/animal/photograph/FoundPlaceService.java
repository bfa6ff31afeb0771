package org.culvert.animal.photograph;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.call.IncidentService;
import org.culvert.call.IncidentView;
import org.culvert.platform.ConflictException;
import org.culvert.platform.NotFoundException;
import org.culvert.road.PlaceAsGiven;

/** Puts an incident where a photograph of it was taken, because somebody decided so. */
@ApplicationScoped
public class FoundPlaceService {
    private static final String NOTE =
            "The place is that of the camera, and not of the animal: say in a correction where it lay, if you know.";

    /**
     * What became of an incident's place.
     *
     * @param uncertaintyFrom {@code picture} where the picture tells the error of its position, otherwise {@code network}
     * @param casesFoundElsewhere numbers of its cases that keep another found place: each is corrected by itself
     */
    public record PlacedByPhotograph(
            IncidentView incident, String uncertaintyFrom, List<Long> casesFoundElsewhere, String note) {}

    private final PhotographService photographs;
    private final IncidentService incidents;
    private final CaseService cases;
    private final EntityManager entities;

    FoundPlaceService(
            PhotographService photographs, IncidentService incidents, CaseService cases, EntityManager entities) {
        this.photographs = photographs;
        this.incidents = incidents;
        this.cases = cases;
        this.entities = entities;
    }

    /**
     * The incident's place becomes that of the photograph; the one before stays in its revisions.
     *
     * @throws ConflictException when the photograph was taken back, or tells no place that may be read
     */
    @Transactional
    public PlacedByPhotograph place(UUID incidentId, UUID photographId, String reason, boolean showPeople) {
        Photograph photograph = photographs.require(photographId);
        if (!isOf(photograph, incidentId)) {
            throw new NotFoundException("photograph of that incident", photographId);
        }
        photograph.requireStands();
        if (photograph.placeVerbatim == null) {
            throw new ConflictException(
                    photograph.takenWhereFound
                            ? "That photograph tells no place."
                            : "That photograph was not taken where the animal was found: its place is not read.");
        }
        var given = new PlaceAsGiven(
                null, photograph.placeVerbatim, null, null, null, null, photograph.positionErrorMetres, null, null);
        IncidentView placed =
                incidents.movePlace(incidentId, given, "By photograph " + photographId + ": " + reason, showPeople);
        UUID placeId =
                Objects.requireNonNull(placed.place(), "it was placed just now").id();
        return new PlacedByPhotograph(
                placed,
                photograph.positionErrorMetres == null ? "network" : "picture",
                cases.numbersFoundElsewhere(incidentId, placeId),
                NOTE);
    }

    /** Of the incident or of one that stands joined with it, or of a case of either. */
    private boolean isOf(Photograph photograph, UUID incidentId) {
        UUID caseId = photograph.caseId;
        UUID of = caseId == null ? photograph.incidentId : cases.getCase(caseId).incidentId();
        if (incidentId.equals(of)) {
            return true;
        }
        return !entities.createNativeQuery("select 1 from joined_incidents where incident_id = ?1 and other_id = ?2")
                .setParameter(1, incidentId)
                .setParameter(2, of)
                .getResultList()
                .isEmpty();
    }
}
