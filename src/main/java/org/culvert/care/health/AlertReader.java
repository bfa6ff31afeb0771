package org.culvert.care.health;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Shows alerts, a page of them in as many questions as one; what is of now is derived here and kept nowhere. */
@ApplicationScoped
class AlertReader {
    private static final String MEMBERS = """
            select m.alert_id, m.report_id, r.case_id, r.day, m.happened_at, r.withdrawn_at is not null, r.animal_id,
                   p.decimal_latitude, p.decimal_longitude, p.coordinate_uncertainty_in_meters
            from health_alert_members m join syndrome_reports r on r.id = m.report_id join cases c on c.id = r.case_id
            left join places p on p.id = c.found_place_id
            where m.alert_id in (:ids) order by r.day, r.id
            """;

    private record Member(
            UUID reportId,
            UUID caseId,
            LocalDate day,
            Instant since,
            boolean withdrawn,
            UUID animalId,
            @Nullable Position place,
            double uncertaintyMetres) {}

    private final AlertService.Acknowledgements acknowledgements;
    private final RecordViews records;
    private final EntityManager entities;

    AlertReader(AlertService.Acknowledgements acknowledgements, RecordViews records, EntityManager entities) {
        this.acknowledgements = acknowledgements;
        this.records = records;
        this.entities = entities;
    }

    /** Reads at once what the views of some alerts need. */
    Function<HealthAlert, HealthAlertView> viewer(List<HealthAlert> shown) {
        if (shown.isEmpty()) {
            return row -> view(row, "", List.of(), List.of());
        }
        records.lookUp(shown);
        List<UUID> ids = shown.stream().map(HealthAlert::id).toList();
        Map<UUID, List<Member>> membersByAlert = members(ids);
        List<HealthAlertAcknowledgement> read = acknowledgements.list("alertId in ?1 order by happenedAt, id", ids);
        records.lookUp(read);
        Map<UUID, List<HealthAlertAcknowledgement>> readByAlert =
                read.stream().collect(Collectors.groupingBy(row -> row.alertId));
        Map<UUID, String> names =
                names(shown.stream().map(row -> row.syndromeId).distinct().toList());
        return row -> view(
                row,
                names.getOrDefault(row.syndromeId, ""),
                membersByAlert.getOrDefault(row.id(), List.of()),
                readByAlert.getOrDefault(row.id(), List.of()));
    }

    private Map<UUID, String> names(List<UUID> syndromes) {
        Map<UUID, String> names = new HashMap<>();
        List<?> found = entities.createNativeQuery("select id, name from syndromes where id in (:ids)", Object[].class)
                .setParameter("ids", syndromes)
                .getResultList();
        for (Object one : found) {
            Object[] columns = (Object[]) one;
            names.put((UUID) columns[0], (String) columns[1]);
        }
        return names;
    }

    private Map<UUID, List<Member>> members(List<UUID> ids) {
        Map<UUID, List<Member>> byAlert = new HashMap<>();
        List<?> found = entities.createNativeQuery(MEMBERS, Object[].class)
                .setParameter("ids", ids)
                .getResultList();
        for (Object one : found) {
            Object[] columns = (Object[]) one;
            Position place = columns[7] == null ? null : new Position((Double) columns[7], (Double) columns[8]);
            byAlert.computeIfAbsent((UUID) columns[0], id -> new ArrayList<>())
                    .add(new Member(
                            (UUID) columns[1],
                            (UUID) columns[2],
                            day(columns[3]),
                            Objects.requireNonNull(org.culvert.platform.Rows.instant(columns[4])),
                            (Boolean) columns[5],
                            (UUID) columns[6],
                            place,
                            columns[9] == null ? 0 : (Double) columns[9]));
        }
        return byAlert;
    }

    static LocalDate day(Object column) {
        return column instanceof java.sql.Date date ? date.toLocalDate() : (LocalDate) column;
    }

    private HealthAlertView view(
            HealthAlert row, String syndrome, List<Member> within, List<HealthAlertAcknowledgement> read) {
        List<Member> standing =
                within.stream().filter(member -> !member.withdrawn()).toList();
        List<Member> placed =
                standing.stream().filter(member -> member.place() != null).toList();
        Position middle = placed.isEmpty() ? null : middle(placed);
        int animals = (int) standing.stream().map(Member::animalId).distinct().count();
        LocalDate first = standing.isEmpty() ? null : standing.get(0).day();
        LocalDate last =
                standing.isEmpty() ? null : standing.get(standing.size() - 1).day();
        return new HealthAlertView(
                row.id(),
                row.syndromeId,
                syndrome,
                state(row, within, read),
                animals,
                first,
                last,
                middle == null ? null : middle.latitude(),
                middle == null ? null : middle.longitude(),
                middle == null ? null : farthest(middle, placed),
                row.smallestCount,
                row.withinKilometres,
                row.withinDays,
                String.format(
                        Locale.ROOT,
                        "%d animals with %s; raised where one and at least %d others lie within %s km and %d days of it.",
                        animals,
                        syndrome,
                        row.smallestCount - 1,
                        kilometres(row.withinKilometres),
                        row.withinDays),
                within.stream()
                        .map(member -> new HealthAlertView.AlikeReport(
                                member.reportId(), member.caseId(), member.day(), member.since(), member.withdrawn()))
                        .toList(),
                read.stream().map(this::acknowledged).toList(),
                row.joinedTo,
                HealthAlertView.NOTE,
                records.of(row));
    }

    private HealthAlertView.Acknowledged acknowledged(HealthAlertAcknowledgement row) {
        RecordView record = records.of(row);
        return new HealthAlertView.Acknowledged(
                row.name, row.words, Objects.requireNonNull(row.happenedAt()), record.recordedBy());
    }

    private static String state(HealthAlert row, List<Member> within, List<HealthAlertAcknowledgement> read) {
        if (row.joinedTo != null) {
            return "joined";
        }
        if (read.isEmpty()) {
            return "unread";
        }
        Instant last = Objects.requireNonNull(read.get(read.size() - 1).happenedAt());
        return within.stream().anyMatch(member -> member.since().isAfter(last)) ? "grownSince" : "read";
    }

    private static String kilometres(double kilometres) {
        return java.math.BigDecimal.valueOf(kilometres).stripTrailingZeros().toPlainString();
    }

    /** The middle of some places, as that of the vectors to them. */
    private static Position middle(List<Member> placed) {
        double x = 0;
        double y = 0;
        double z = 0;
        for (Member member : placed) {
            Position place = Objects.requireNonNull(member.place());
            double latitude = Math.toRadians(place.latitude());
            double longitude = Math.toRadians(place.longitude());
            x += Math.cos(latitude) * Math.cos(longitude);
            y += Math.cos(latitude) * Math.sin(longitude);
            z += Math.sin(latitude);
        }
        return new Position(Math.toDegrees(Math.atan2(z, Math.hypot(x, y))), Math.toDegrees(Math.atan2(y, x)));
    }

    private static double farthest(Position middle, List<Member> placed) {
        return placed.stream()
                .mapToDouble(member -> Geodesy.metresBetween(middle, Objects.requireNonNull(member.place()))
                        + member.uncertaintyMetres())
                .max()
                .orElse(0);
    }
}
