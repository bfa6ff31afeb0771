package org.culvert.exchange.annualreturn;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.culvert.exchange.annualreturn.HeldThings.Kinds;
import org.culvert.exchange.annualreturn.HeldThings.Link;
import org.culvert.exchange.annualreturn.ReturnForms.ReturnPeriod;
import org.culvert.exchange.annualreturn.tally.Counted;
import org.culvert.exchange.annualreturn.tally.CountedAs;
import org.culvert.exchange.annualreturn.tally.Line;
import org.culvert.exchange.annualreturn.tally.Movement;
import org.culvert.exchange.annualreturn.tally.Stay;
import org.culvert.exchange.annualreturn.tally.Tally;
import org.culvert.platform.RegionService;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;

/** Makes the return of a holder out of what is recorded. */
@ApplicationScoped
class ReturnMaker {
    private static final String OUTSIDE = "somebody outside the network";

    private static final Map<String, String> WORDS = Map.of(
            "found",
            "found and taken in",
            "ofMother",
            "came of its mother",
            "set",
            "set to incubate",
            Tally.TRANSFERRED,
            "handed over between holders",
            Tally.GAP,
            "nobody is recorded as holder",
            Tally.HELD_BY_NOBODY,
            "ended while nobody is recorded as holder, or before it began: in no line",
            Tally.UNKNOWN,
            "nobody knows how it ended");

    private final HeldReader reader;
    private final RosterService roster;
    private final AuthorisationService authorisations;
    private final RegionService regions;

    ReturnMaker(HeldReader reader, RosterService roster, AuthorisationService authorisations, RegionService regions) {
        this.reader = reader;
        this.roster = roster;
        this.authorisations = authorisations;
        this.regions = regions;
    }

    /** @param knownAt when what is read was recorded */
    ReturnDraft make(ReturnForm form, Holder holder, ReturnPeriod period, Instant knownAt) {
        ZoneId zone = regions.zone();
        Instant from = period.from().atStartOfDay(zone).toInstant();
        Instant before = period.to().plusDays(1).atStartOfDay(zone).toInstant();
        HeldThings held =
                reader.read(new HeldReader.Asked(holder, form.countsMembers, form.jurisdiction, from, before));
        Tally tally = Tally.of(
                from,
                before,
                held.counted().stream().filter(one -> counts(form, one.kind())).toList());
        return new ReturnDraft(
                form.id(),
                form.jurisdiction,
                form.title,
                form.source,
                told(holder),
                licences(holder, period),
                period.from(),
                period.to(),
                period.due(),
                zone.getId(),
                knownAt,
                form.countsEggs,
                form.countsHatchlings,
                form.countsBodies,
                form.countsMembers,
                form.words(),
                tally.lines().stream().map(line -> line(form, held, line)).toList(),
                transfers(held, tally, zone),
                tally.doubts().stream()
                        .map(doubt -> {
                            Kinds taxon = taxon(held, doubt.taxon());
                            return new ReturnDraft.ReturnDoubt(
                                    taxon.id(),
                                    taxon.scientificName(),
                                    doubt.kind(),
                                    doubt.in() ? "in" : "out",
                                    doubt.why(),
                                    word(form, doubt.why()),
                                    doubt.count(),
                                    doubt.cases());
                        })
                        .toList(),
                leftOut(form, held, from, before),
                ReturnForms.NOTE);
    }

    private static boolean counts(ReturnForm form, CountedAs kind) {
        return switch (kind) {
            case animal -> true;
            case hatchling -> form.countsHatchlings;
            case body -> form.countsBodies;
            case egg -> form.countsEggs;
        };
    }

    private ReturnDraft.ReturnHolder told(Holder holder) {
        UUID memberId = holder.memberId();
        if (memberId != null) {
            RosterService.MemberView member = roster.getMember(memberId);
            return new ReturnDraft.ReturnHolder(
                    memberId,
                    null,
                    member.callSign(),
                    roster.getOrganisation(member.organisationId()).name());
        }
        String name = roster.getOrganisation(Objects.requireNonNull(holder.organisationId()))
                .name();
        return new ReturnDraft.ReturnHolder(null, holder.organisationId(), name, name);
    }

    private List<ReturnDraft.ReturnLicence> licences(Holder holder, ReturnPeriod period) {
        return authorisations.list(holder.memberId(), holder.organisationId()).stream()
                .filter(row ->
                        !row.validFrom().isAfter(period.to()) && !row.validTo().isBefore(period.from()))
                .map(row -> new ReturnDraft.ReturnLicence(
                        row.number(),
                        row.authorisationClass(),
                        row.jurisdiction(),
                        row.taxonGroup(),
                        row.validFrom(),
                        row.validTo()))
                .toList();
    }

    private static ReturnDraft.ReturnLine line(ReturnForm form, HeldThings held, Line line) {
        Kinds taxon = taxon(held, line.taxon());
        return new ReturnDraft.ReturnLine(
                taxon.id(),
                taxon.scientificName(),
                taxon.vernacularName(),
                line.kind(),
                line.opening(),
                line.cameIn(),
                counts(form, line.came()),
                line.wentOut(),
                counts(form, line.went()),
                line.closing());
    }

    private static List<ReturnDraft.ReturnCount> counts(ReturnForm form, SortedMap<String, Integer> by) {
        return by.entrySet().stream()
                .map(way -> new ReturnDraft.ReturnCount(way.getKey(), word(form, way.getKey()), way.getValue()))
                .toList();
    }

    private static String word(ReturnForm form, String how) {
        String word = form.vocabulary.get(how);
        return word == null ? WORDS.getOrDefault(how, how) : word;
    }

    private List<ReturnDraft.ReturnTransfer> transfers(HeldThings held, Tally tally, ZoneId zone) {
        Map<String, Optional<String>> listed = new HashMap<>();
        List<ReturnDraft.ReturnTransfer> transfers = new ArrayList<>();
        for (Movement movement : tally.movements()) {
            Stay other = movement.other();
            if (other == null) {
                continue;
            }
            Counted what = movement.what();
            Kinds taxon = taxon(held, what.taxon());
            LocalDate on = LocalDate.ofInstant(movement.at(), zone);
            Link link = Objects.requireNonNull(held.links().get(other.link()));
            Holder holder = link.holder();
            String number = link.licenceNumber() != null
                    ? link.licenceNumber()
                    : listed.computeIfAbsent(
                                    holder + " " + taxon.groupId() + " " + on,
                                    key -> authorisations.find(holder, taxon.groupId(), on))
                            .orElse(null);
            transfers.add(new ReturnDraft.ReturnTransfer(
                    what.caseNumber(),
                    taxon.id(),
                    taxon.scientificName(),
                    what.kind(),
                    what.count(),
                    movement.in() ? "in" : "out",
                    on,
                    movement.at(),
                    holder.memberId(),
                    holder.organisationId(),
                    link.name() == null ? OUTSIDE : link.name(),
                    number,
                    link.licenceNumber() == null ? null : link.licenceOrganisation(),
                    link.licenceNumber() == null ? null : link.licenceJurisdiction()));
        }
        return transfers;
    }

    private static List<ReturnDraft.ReturnLeftOut> leftOut(
            ReturnForm form, HeldThings held, Instant from, Instant before) {
        SortedMap<String, LeftOut> found = new TreeMap<>();
        for (Counted one : held.counted()) {
            if (counts(form, one.kind()) || !wasHeld(one, from, before)) {
                continue;
            }
            LeftOut of = found.computeIfAbsent(
                    one.taxon() + " " + one.kind(), key -> new LeftOut(one.kind(), taxon(held, one.taxon())));
            of.count += one.count();
            of.cases.add(one.caseNumber());
        }
        return found.values().stream()
                .map(of -> new ReturnDraft.ReturnLeftOut(
                        of.taxon.id(), of.taxon.scientificName(), of.kind, of.count, List.copyOf(of.cases)))
                .toList();
    }

    private static boolean wasHeld(Counted one, Instant from, Instant before) {
        return one.stays().stream()
                .anyMatch(stay -> stay.own()
                        && stay.from().isBefore(before)
                        && (stay.to() == null || !stay.to().isBefore(from)));
    }

    private static Kinds taxon(HeldThings held, String id) {
        return Objects.requireNonNull(held.taxa().get(id));
    }

    private static final class LeftOut {
        private final CountedAs kind;
        private final Kinds taxon;
        private final TreeSet<Long> cases = new TreeSet<>();
        private int count;

        LeftOut(CountedAs kind, Kinds taxon) {
            this.kind = kind;
            this.taxon = taxon;
        }
    }
}
