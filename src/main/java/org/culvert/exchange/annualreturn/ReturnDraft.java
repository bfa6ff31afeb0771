package org.culvert.exchange.annualreturn;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.exchange.annualreturn.tally.CountedAs;
import org.jspecify.annotations.Nullable;

/**
 * A return as it stands: this is what is signed, with the names of then. It names no person: of members their call signs.
 *
 * @param knownAt it counts what was recorded until then
 * @param lines of each kind of animal what was held, came, went and is held; opening + in = out + closing
 * @param transfers what came from other holders or went to them, with their licence
 * @param doubts what cannot be told, each with its cases; as far as it came or went it is in the lines too
 * @param leftOut what the form does not count as one
 */
public record ReturnDraft(
        UUID formId,
        String jurisdiction,
        String title,
        String source,
        ReturnHolder holder,
        List<ReturnLicence> licences,
        LocalDate from,
        LocalDate to,
        LocalDate due,
        String timeZone,
        Instant knownAt,
        boolean countsEggs,
        boolean countsHatchlings,
        boolean countsBodies,
        boolean countsMembers,
        List<ReturnForms.ReturnWord> vocabulary,
        List<ReturnLine> lines,
        List<ReturnTransfer> transfers,
        List<ReturnDoubt> doubts,
        List<ReturnLeftOut> leftOut,
        String note) {

    /** @param name call sign of a member, name of an organisation */
    public record ReturnHolder(
            @Nullable UUID memberId, @Nullable UUID organisationId, String name, String organisation) {}

    /** An authorisation that was listed for the holder on some day of the period. */
    public record ReturnLicence(
            String number,
            String authorisationClass,
            String jurisdiction,
            String taxonGroup,
            LocalDate validFrom,
            LocalDate validTo) {}

    public record ReturnLine(
            UUID taxonId,
            String scientificName,
            String vernacularName,
            CountedAs kind,
            int opening,
            int cameIn,
            List<ReturnCount> cameInBy,
            int wentOut,
            List<ReturnCount> wentOutBy,
            int closing) {}

    /**
     * How many of a line came or went in one way.
     *
     * @param how as the network calls it
     * @param word as the authority calls it
     */
    public record ReturnCount(String how, String word, int count) {}

    /**
     * @param direction {@code in} or {@code out}
     * @param on day of the region
     * @param other who had it before, or has it after: a call sign, an organisation, or somebody outside the network
     * @param otherLicence number of the other's licence, or of the authorisation that was listed for the other on that day;
     *     null where none was
     * @param otherLicenceOf whose licence it is, where that is not the other
     */
    public record ReturnTransfer(
            long caseNumber,
            UUID taxonId,
            String scientificName,
            CountedAs kind,
            int count,
            String direction,
            LocalDate on,
            Instant at,
            @Nullable UUID otherMemberId,
            @Nullable UUID otherOrganisationId,
            String other,
            @Nullable String otherLicence,
            @Nullable String otherLicenceOf,
            @Nullable String otherLicenceJurisdiction) {}

    /** @param why {@code custodyGap}, {@code unknown}, or {@code heldByNobody} */
    public record ReturnDoubt(
            UUID taxonId,
            String scientificName,
            CountedAs kind,
            String direction,
            String why,
            String words,
            int count,
            List<Long> cases) {}

    /** What was held in the period, and does not count as one by the form. */
    public record ReturnLeftOut(UUID taxonId, String scientificName, CountedAs kind, int count, List<Long> cases) {}
}
