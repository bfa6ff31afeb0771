package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Recorded;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Corrections;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** The chain of custody of a case: who answers for the animal at any instant. */
@ApplicationScoped
public class CustodyService {
    private final CaseRepositories.Cases cases;
    private final CaseRepositories.Animals animals;
    private final CaseRepositories.CustodyLinks links;
    private final CaseRepositories.HandOvers handOvers;
    private final CaseRepositories.Fates fates;
    private final RosterService roster;
    private final AuthorisationService authorisations;
    private final TaxonService taxa;
    private final RegionService region;
    private final Clock clock;

    CustodyService(
            CaseRepositories.Cases cases,
            CaseRepositories.Animals animals,
            CaseRepositories.CustodyLinks links,
            CaseRepositories.HandOvers handOvers,
            CaseRepositories.Fates fates,
            RosterService roster,
            AuthorisationService authorisations,
            TaxonService taxa,
            RegionService region,
            Clock clock) {
        this.cases = cases;
        this.animals = animals;
        this.links = links;
        this.handOvers = handOvers;
        this.fates = fates;
        this.roster = roster;
        this.authorisations = authorisations;
        this.taxa = taxa;
        this.region = region;
        this.clock = clock;
    }

    /** Starts a link, open at its end. */
    @Transactional
    void begin(UUID caseId, Holder holder, Instant from) {
        begin(caseId, holder, from, null);
    }

    private void begin(UUID caseId, Holder holder, Instant from, @Nullable Licence licence) {
        links.persistAndFlush(new CustodyLink(
                caseId, holder, from, null, authorisation(caseId, holder, from).orElse(null), licence));
    }

    /** Who answers for the animal at an instant, or empty in a gap. */
    @Transactional
    public Optional<Holder> findHolder(UUID caseId, Instant at) {
        return open(caseId, at).map(link -> link.holder);
    }

    /** The cases whose animals a member holds at some instant of a span, in the order in which they came. */
    @Transactional
    public List<UUID> listHeld(UUID memberId, Instant from, Instant to) {
        var asked = new Span(from, to);
        return links.list("holder.memberId = ?1 order by happenedAt, id", memberId).stream()
                .filter(link -> link.span().overlaps(asked))
                .map(link -> link.caseId)
                .distinct()
                .toList();
    }

    /**
     * How often custody and ends of some cases were recorded or revised, which never grows less, and when it was last.
     *
     * @return by case; a case without either is left out
     */
    @Transactional
    public Map<UUID, Changes> changesByCase(Collection<UUID> caseIds) {
        Map<UUID, Changes> changes = new HashMap<>();
        if (!caseIds.isEmpty()) {
            links.list("caseId in ?1", caseIds)
                    .forEach(link -> changes.merge(link.caseId, Changes.of(link), Changes::and));
            fates.list("caseId in ?1", caseIds)
                    .forEach(fate -> changes.merge(fate.caseId, Changes.of(fate), Changes::and));
        }
        return changes;
    }

    /** How often some records were entered or revised, and when it was last. */
    public record Changes(int count, Instant last) {
        private static Changes of(Recorded row) {
            Instant revised = row.revisedAt();
            return new Changes(row.version() + 1, revised == null ? row.recordedAt() : revised);
        }

        private Changes and(Changes other) {
            return new Changes(count + other.count, last.isAfter(other.last) ? last : other.last);
        }
    }

    /** Offers the animal to another holder; the giver stays holder until the taker accepts. */
    @Transactional
    public UUID offer(UUID caseId, CaseEntries.HandOverEntry entry) {
        requireOpenCase(caseId);
        Holder taker = Holder.require("taker", entry.taker());
        requireKnown("taker", taker);
        var handOver = new HandOver(
                caseId, taker, Licence.of(entry.otherLicence()), entry.at() == null ? clock.instant() : entry.at());
        handOvers.persistAndFlush(handOver);
        return handOver.id();
    }

    /** The taker has the animal: the giver's link ends and the taker's begins, at the same instant. */
    @Transactional
    public UUID accept(UUID handOverId, CaseEntries.AcceptanceEntry entry) {
        HandOver handOver = require(handOverId);
        requireOpenCase(handOver.caseId);
        Instant at = entry.at() == null ? clock.instant() : entry.at();
        if (handOver.happenedAt() != null && at.isBefore(handOver.happenedAt())) {
            throw InvalidException.of("at", "It was accepted before it was offered.", "after " + handOver.happenedAt());
        }
        Optional<CustodyLink> giver = last(handOver.caseId);
        if (giver.isPresent() && !at.isAfter(giver.get().span().from())) {
            throw InvalidException.of(
                    "at",
                    "The giver had it only later.",
                    "after " + giver.get().span().from());
        }
        handOver.accept(at);
        giver.filter(link -> link.span().to() == null).ifPresent(link -> link.endAt(at));
        links.flush();
        begin(handOver.caseId, handOver.taker, at, handOver.licence);
        return handOver.caseId;
    }

    @Transactional
    public UUID refuse(UUID handOverId, CaseEntries.RefusalEntry entry) {
        HandOver handOver = require(handOverId);
        handOver.refuse(entry.at() == null ? clock.instant() : entry.at(), entry.reason());
        handOvers.flush();
        return handOver.caseId;
    }

    /** Ends the last link when a case ends. */
    @Transactional
    void end(UUID caseId, Instant at) {
        last(caseId).filter(link -> link.span().to() == null).ifPresent(link -> {
            if (!at.isAfter(link.span().from())) {
                throw InvalidException.of(
                        "at",
                        "The holder had it only later.",
                        "after " + link.span().from());
            }
            link.endAt(at);
        });
        links.flush();
    }

    /** The authorisation listed for a holder on the day of an instant, for the kind of animal of a case. */
    @Transactional
    public Optional<String> authorisation(UUID caseId, Holder holder, Instant at) {
        Case row = cases.findByIdOptional(caseId).orElseThrow(() -> new NotFoundException("case", caseId));
        UUID group = taxa.getTaxon(animals.findById(row.animalId).taxonId).taxonGroupId();
        return authorisations.find(holder, group, at.atZone(region.zone()).toLocalDate());
    }

    /** Enters a link that was forgotten: in a gap, before the first or after the last, or between links that meet. */
    @Transactional
    public void insert(UUID caseId, CaseCorrections.CustodyEntry entry) {
        lock(caseId);
        Holder holder = Holder.require("holder", entry.holder());
        requireKnown("holder", holder);
        if (entry.between()) {
            requireLasts(caseId, entry.from(), entry.to());
            makeRoom(caseId, new Span(entry.from(), entry.to()), entry.reason());
        }
        requireFits(caseId, null, entry.from(), entry.to());
        var link = new CustodyLink(
                caseId,
                holder,
                entry.from(),
                entry.to(),
                authorisation(caseId, holder, entry.from()).orElse(null),
                Licence.of(entry.otherLicence()));
        link.enteredBecause(entry.reason());
        links.persistAndFlush(link);
    }

    /** Corrects a link: who, from when, to when. */
    @Transactional
    public void correct(UUID caseId, UUID linkId, CaseCorrections.CustodyCorrection correction) {
        lock(caseId);
        CustodyLink link = links.findByIdOptional(linkId)
                .filter(row -> row.caseId.equals(caseId))
                .orElseThrow(() -> new NotFoundException("link of custody", linkId));
        Holder holder = Holder.require("holder", correction.holder().over("holder", link.holder));
        if (correction.holder().isMade()) {
            requireKnown("holder", holder);
        }
        Span before = link.span();
        Instant from = Corrections.known("from", correction.from(), before.from(), clock);
        Instant to = Corrections.past("to", correction.to(), before.to(), clock);
        requireFits(caseId, linkId, from, to);
        link.correct(holder, from, to, authorisation(caseId, holder, from).orElse(null), correction.reason());
        links.flush();
    }

    /** Shortens what goes on into a span and lets begin later what goes on after it; no link is covered or cut in two. */
    private void makeRoom(UUID caseId, Span wanted, String reason) {
        for (CustodyLink other : chain(caseId)) {
            Span span = other.span();
            if (!span.overlaps(wanted)) {
                continue;
            }
            boolean before = span.from().isBefore(wanted.from());
            Instant after =
                    wanted.to() == null || span.to() != null && !span.to().isAfter(wanted.to()) ? null : wanted.to();
            if (before && after != null) {
                throw new ConflictException("Somebody answers for the animal " + span.words() + ", and this would be "
                        + wanted.words()
                        + ": that would cut one link in two. Correct the end of that link first, and enter"
                        + " what came after as a link of its own.");
            }
            if (!before && after == null) {
                throw new ConflictException(
                        "Somebody answers for the animal " + span.words() + ", and this would be " + wanted.words()
                                + ": nothing would be left of that link. Correct its holder, if that is wrong.");
            }
            Instant from = before ? span.from() : java.util.Objects.requireNonNull(after);
            other.correct(
                    other.holder,
                    from,
                    before ? wanted.from() : span.to(),
                    before
                            ? other.authorisation
                            : authorisation(caseId, other.holder, from).orElse(null),
                    reason);
        }
        links.flush();
    }

    /** A link lasts, begins with the case or later, ends with it or before, and meets no other. */
    private void requireFits(UUID caseId, @Nullable UUID linkId, Instant from, @Nullable Instant to) {
        requireLasts(caseId, from, to);
        var span = new Span(from, to);
        for (CustodyLink other : chain(caseId)) {
            if (!other.id().equals(linkId) && other.span().overlaps(span)) {
                throw new ConflictException(
                        "Someone else answers for the animal " + other.span().words()
                                + ", and this would be " + span.words()
                                + "; custody never overlaps. Shorten that link first, if"
                                + " it is wrong, or enter this one between.");
            }
        }
    }

    private void requireLasts(UUID caseId, Instant from, @Nullable Instant to) {
        if (to != null && !to.isAfter(from)) {
            throw InvalidException.of("to", "It ends before it begins.", "an instant after from");
        }
        if (from.isAfter(clock.instant())) {
            throw InvalidException.of("from", "This lies in the future.", "an instant that has passed");
        }
        Instant found = cases.findById(caseId).happenedAt();
        if (found != null && from.isBefore(found)) {
            throw InvalidException.of(
                    "from",
                    "The animal was found only later, at " + found + ".",
                    "correct foundAt first, if it is wrong");
        }
        Fate fate = fates.find("caseId = ?1 and withdrawnAt is null", caseId).firstResult();
        Instant ended = fate == null ? null : fate.happenedAt();
        if (ended != null && (to == null || to.isAfter(ended))) {
            throw InvalidException.of("to", "The case ended before that, at " + ended + ".", "at or before " + ended);
        }
    }

    /** No link begins before the animal was found. */
    void requireNotBefore(UUID caseId, Instant found) {
        chain(caseId).stream()
                .filter(link -> link.span().from().isBefore(found))
                .findFirst()
                .ifPresent(link -> {
                    throw new ConflictException("Someone answers for the animal "
                            + link.span().words() + ", before it was found. Correct that link first, if it is wrong.");
                });
    }

    /** Custody that ended with the case ends when that does; with null it goes on. */
    void moveEnd(UUID caseId, Instant ended, @Nullable Instant at, String reason) {
        last(caseId).filter(link -> ended.equals(link.span().to())).ifPresent(link -> {
            if (at != null && !at.isAfter(link.span().from())) {
                throw InvalidException.of(
                        "at",
                        "The holder had it only later.",
                        "after " + link.span().from());
            }
            link.correct(link.holder, link.span().from(), at, link.authorisation, reason);
        });
        links.flush();
    }

    List<CustodyLink> chain(UUID caseId) {
        return links.list("caseId = ?1 order by happenedAt", caseId);
    }

    @Nullable
    HandOver pending(UUID caseId) {
        return handOvers
                .find("caseId = ?1 and acceptedAt is null and refusedAt is null", caseId)
                .firstResult();
    }

    private Optional<CustodyLink> last(UUID caseId) {
        List<CustodyLink> chain = chain(caseId);
        return chain.isEmpty() ? Optional.empty() : Optional.of(chain.get(chain.size() - 1));
    }

    private Optional<CustodyLink> open(UUID caseId, Instant at) {
        return chain(caseId).stream().filter(link -> link.span().contains(at)).findFirst();
    }

    HandOver require(UUID id) {
        return handOvers.findByIdOptional(id).orElseThrow(() -> new NotFoundException("hand-over", id));
    }

    /** Whoever changes custody or the end of a case waits here for others who do, until the transaction ends. */
    void lock(UUID caseId) {
        if (cases.findByIdOptional(caseId, LockModeType.PESSIMISTIC_WRITE).isEmpty()) {
            throw new NotFoundException("case", caseId);
        }
    }

    private void requireOpenCase(UUID caseId) {
        lock(caseId);
        if (fates.count("caseId = ?1 and withdrawnAt is null", caseId) > 0) {
            throw new ConflictException("That case has ended; nobody takes the animal over any more.");
        }
    }

    /** Whether a holder is a member, or a clinic or shelter of the network or the network itself. */
    boolean isOfNetwork(Holder holder) {
        return holder.memberId() != null
                || holder.organisationId() != null
                        && List.of("network", "clinic", "shelter")
                                .contains(roster.getOrganisation(holder.organisationId())
                                        .kind());
    }

    void requireKnown(String field, Holder holder) {
        if (holder.memberId() != null) {
            roster.getMember(holder.memberId());
        } else if (holder.organisationId() != null) {
            roster.getOrganisation(holder.organisationId());
        } else if (holder.personId() == null) {
            throw InvalidException.of(field, "Nobody is named.", "a holder");
        }
    }
}
