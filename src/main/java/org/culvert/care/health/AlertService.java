package org.culvert.care.health;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.care.health.alike.AlikeFinder;
import org.culvert.care.health.alike.Report;
import org.culvert.care.health.alike.Threshold;
import org.culvert.geo.Bounds;
import org.culvert.geo.Position;
import org.culvert.platform.ConflictException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.jspecify.annotations.Nullable;

/** Raises alerts where reports are alike, and keeps who has read them. */
@ApplicationScoped
public class AlertService {
    /** What may be near a place, or near something that is: twice as far in either way. */
    private static final String AROUND = """
            select r.id, r.animal_id, p.decimal_latitude, p.decimal_longitude, r.day
            from syndrome_reports r join cases c on c.id = r.case_id join places p on p.id = c.found_place_id
            where r.syndrome_id = :syndrome and r.withdrawn_at is null and r.day between :first and :last
              and p.decimal_latitude between :south and :north and (%s)
            order by r.id
            """;

    @ApplicationScoped
    static class Alerts implements PanacheRepositoryBase<HealthAlert, UUID> {}

    @ApplicationScoped
    static class Members implements PanacheRepositoryBase<HealthAlertMember, UUID> {}

    @ApplicationScoped
    static class Acknowledgements implements PanacheRepositoryBase<HealthAlertAcknowledgement, UUID> {}

    @ApplicationScoped
    static class Thresholds implements PanacheRepositoryBase<AlertThreshold, UUID> {}

    private final Alerts alerts;
    private final Members members;
    private final Acknowledgements acknowledgements;
    private final Thresholds thresholds;
    private final AlertReader reader;
    private final EntityManager entities;
    private final Clock clock;

    AlertService(
            Alerts alerts,
            Members members,
            Acknowledgements acknowledgements,
            Thresholds thresholds,
            AlertReader reader,
            EntityManager entities,
            Clock clock) {
        this.alerts = alerts;
        this.members = members;
        this.acknowledgements = acknowledgements;
        this.thresholds = thresholds;
        this.reader = reader;
        this.entities = entities;
        this.clock = clock;
    }

    /** The threshold of a syndrome that holds on a day: its own, else that of all. */
    Optional<AlertThreshold> findThreshold(UUID syndromeId, LocalDate day) {
        return thresholds
                .find(
                        "(syndromeId = ?1 or syndromeId is null) and validFrom <= ?2 and (validTo is null or validTo > ?2)"
                                + " order by syndromeId nulls last",
                        syndromeId,
                        day)
                .firstResultOptional();
    }

    /**
     * Raises an alert where a report makes enough alike, or has the one grow that they are in already; two that it joins are
     * one from then on. Whoever calls holds the syndrome, so that two reports at once make one alert.
     */
    void watch(SyndromeReport row, LocalDate today) {
        AlertThreshold threshold = findThreshold(row.syndromeId, today).orElse(null);
        Position place = placeOf(row);
        if (threshold == null || place == null) {
            return;
        }
        Threshold figures = threshold.figures();
        List<Report> known = around(row, place, figures);
        Map<UUID, UUID> alertByReport = alertsOf(known, threshold.id());
        var added = new Report(row.id(), row.animalId, place, row.day);
        Set<UUID> group = new AlikeFinder(figures).groupOf(added, known, alertByReport::containsKey);
        if (group.isEmpty()) {
            return;
        }
        Instant now = clock.instant();
        HealthAlert alert = alertFor(group, row.syndromeId, threshold, now);
        Set<UUID> there = members.list("reportId in ?1", group).stream()
                .map(member -> member.reportId)
                .collect(Collectors.toSet());
        for (UUID report : group) {
            if (!there.contains(report)) {
                members.persist(new HealthAlertMember(alert.id(), report, now));
            }
        }
        members.flush();
    }

    /** The oldest alert of those that a group is in, into which the others go; a new one where there is none. */
    private HealthAlert alertFor(Collection<UUID> group, UUID syndromeId, AlertThreshold threshold, Instant now) {
        List<UUID> ids = members.list("reportId in ?1", group).stream()
                .map(member -> member.alertId)
                .distinct()
                .toList();
        List<HealthAlert> found = ids.isEmpty() ? List.of() : alerts.list("id in ?1 order by recordedAt, id", ids);
        if (found.isEmpty()) {
            var alert = new HealthAlert(syndromeId, threshold, now);
            alerts.persistAndFlush(alert);
            return alert;
        }
        HealthAlert kept = found.get(0);
        for (HealthAlert other : found.subList(1, found.size())) {
            other.joinTo(kept.id(), now);
            members.list("alertId", other.id()).forEach(member -> member.moveTo(kept.id(), now));
        }
        alerts.flush();
        return kept;
    }

    private List<Report> around(SyndromeReport row, Position place, Threshold figures) {
        // Twice the distance, and the metre by which rounding lets one in
        Bounds box = Bounds.around(place, 2 * (figures.withinKilometres() * 1000 + 1));
        String beside = box.west() <= box.east()
                ? "p.decimal_longitude between :west and :east"
                : "p.decimal_longitude >= :west or p.decimal_longitude <= :east";
        List<?> found = entities.createNativeQuery(String.format(Locale.ROOT, AROUND, beside), Object[].class)
                .setParameter("syndrome", row.syndromeId)
                .setParameter("first", row.day.minusDays(2L * figures.withinDays()))
                .setParameter("last", row.day.plusDays(2L * figures.withinDays()))
                .setParameter("south", box.south())
                .setParameter("north", box.north())
                .setParameter("west", box.west())
                .setParameter("east", box.east())
                .getResultList();
        List<Report> known = new ArrayList<>();
        for (Object one : found) {
            Object[] columns = (Object[]) one;
            known.add(new Report(
                    (UUID) columns[0],
                    (UUID) columns[1],
                    new Position((Double) columns[2], (Double) columns[3]),
                    AlertReader.day(columns[4])));
        }
        return known;
    }

    private @Nullable Position placeOf(SyndromeReport row) {
        List<?> found = entities.createNativeQuery(
                        "select p.decimal_latitude, p.decimal_longitude from cases c join places p on p.id = c.found_place_id"
                                + " where c.id = ?1",
                        Object[].class)
                .setParameter(1, row.caseId)
                .getResultList();
        if (found.isEmpty()) {
            return null;
        }
        Object[] columns = (Object[]) found.get(0);
        return new Position((Double) columns[0], (Double) columns[1]);
    }

    /** Alerts that reports are in, of those that were raised by the threshold that still holds. */
    private Map<UUID, UUID> alertsOf(List<Report> known, UUID thresholdId) {
        Map<UUID, UUID> alertByReport = new HashMap<>();
        List<?> found = entities.createNativeQuery(
                        "select m.report_id, m.alert_id from health_alert_members m join health_alerts a on a.id = m.alert_id"
                                + " where m.report_id in (:ids) and a.threshold_id = :threshold",
                        Object[].class)
                .setParameter("ids", known.stream().map(Report::id).toList())
                .setParameter("threshold", thresholdId)
                .getResultList();
        for (Object one : found) {
            Object[] columns = (Object[]) one;
            alertByReport.put((UUID) columns[0], (UUID) columns[1]);
        }
        return alertByReport;
    }

    @Transactional
    public HealthAlertView getAlert(UUID id) {
        HealthAlert row = require(id);
        return reader.viewer(List.of(row)).apply(row);
    }

    /**
     * Alerts, newest first, without those that went on in another.
     *
     * @param unread only those that nobody has read, or not since they grew
     */
    @Transactional
    public Page<HealthAlertView> listAlerts(boolean unread, int limit, @Nullable UUID before) {
        List<HealthAlert> found = alerts.find(
                        "from HealthAlert a where a.joinedTo is null and (?1 is null or a.id < ?1) and (?2 = false or exists"
                                + " (select 1 from HealthAlertMember m where m.alertId = a.id and not exists (select 1 from"
                                + " HealthAlertAcknowledgement k where k.alertId = a.id and k.happenedAt >= m.happenedAt)))"
                                + " order by a.id desc",
                        before,
                        unread)
                .page(0, limit + 1)
                .list();
        return Page.of(found, limit, reader.viewer(found), row -> row.id().toString());
    }

    @Transactional
    public HealthAlertView acknowledge(UUID id, SyndromeEntries.AcknowledgementEntry entry) {
        HealthAlert row = require(id);
        hold(entities, row.syndromeId);
        entities.refresh(row);
        if (row.joinedTo != null) {
            throw new ConflictException("That alert goes on in another: read " + row.joinedTo + ".");
        }
        acknowledgements.persistAndFlush(new HealthAlertAcknowledgement(id, entry, clock.instant()));
        return reader.viewer(List.of(row)).apply(row);
    }

    /** Holds a syndrome until the transaction ends, so that its reports are looked at one after the other. */
    static void hold(EntityManager entities, UUID syndromeId) {
        entities.createNativeQuery("select id from syndromes where id = ?1 for no key update")
                .setParameter(1, syndromeId)
                .getResultList();
    }

    private HealthAlert require(UUID id) {
        return alerts.findByIdOptional(id).orElseThrow(() -> new NotFoundException("health alert", id));
    }
}
