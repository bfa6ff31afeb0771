package org.culvert.exchange.auditfile;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseView;
import org.culvert.exchange.auditfile.AuditFile.AuditedDays;
import org.culvert.exchange.auditfile.AuditFile.AuditedLink;
import org.culvert.exchange.auditfile.AuditFile.DaySpan;
import org.culvert.platform.RegionService;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;

/** Holds each link of custody against what was listed for its holder on each of its days. */
@ApplicationScoped
class CustodyAudit {
    private final AuthorisationService authorisations;
    private final RosterService roster;
    private final RegionService regions;

    CustodyAudit(AuthorisationService authorisations, RosterService roster, RegionService regions) {
        this.authorisations = authorisations;
        this.roster = roster;
        this.regions = regions;
    }

    /** @param now until when a link that lasts is read */
    List<AuditedLink> read(CaseView of, Instant now) {
        ZoneId zone = regions.zone();
        return of.custody().stream()
                .map(link -> read(link, of.animal().taxonGroupId(), zone, now))
                .toList();
    }

    private AuditedLink read(CaseView.CustodyView link, UUID groupId, ZoneId zone, Instant now) {
        LocalDate first = LocalDate.ofInstant(link.from(), zone);
        Instant to = link.to();
        // It is held up to its end and not at it: one that ends at midnight is not of the day that begins then
        LocalDate last = LocalDate.ofInstant(to == null ? now : to.minusNanos(1), zone);
        List<AuditedDays> days = new ArrayList<>();
        for (AuthorisationService.ListedDays span :
                authorisations.listDays(link.holder(), groupId, first, last.isBefore(first) ? first : last)) {
            days.add(new AuditedDays(span.from(), span.to(), span.number(), span.unknown(), span.against()));
        }
        return new AuditedLink(
                link.id(),
                name(link.holder()),
                link.from(),
                to,
                link.authorisation(),
                link.otherLicence(),
                days,
                notListed(days),
                link.record());
    }

    /** Spans that meet are one. */
    private static List<DaySpan> notListed(List<AuditedDays> days) {
        List<DaySpan> spans = new ArrayList<>();
        for (AuditedDays span : days) {
            if (span.authorisation() != null) {
                continue;
            }
            int last = spans.size() - 1;
            if (last >= 0 && spans.get(last).to().plusDays(1).equals(span.from())) {
                spans.set(last, new DaySpan(spans.get(last).from(), span.to()));
            } else {
                spans.add(new DaySpan(span.from(), span.to()));
            }
        }
        return spans;
    }

    private String name(Holder holder) {
        if (holder.memberId() != null) {
            return roster.getMember(holder.memberId()).callSign();
        }
        return holder.organisationId() == null
                ? "somebody outside the network"
                : roster.getOrganisation(Objects.requireNonNull(holder.organisationId()))
                        .name();
    }
}
