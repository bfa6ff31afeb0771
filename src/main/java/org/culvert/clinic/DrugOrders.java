package org.culvert.clinic;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Keeps what vets order and what was given by it. */
@ApplicationScoped
public class DrugOrders {
    /** An order as kept, with what was given by it. */
    public record DrugOrderView(
            UUID id,
            String drug,
            String dose,
            String route,
            String times,
            LocalDate from,
            @Nullable LocalDate until,
            boolean controlled,
            String vetName,
            String vetRegistration,
            Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            List<DrugUseView> uses,
            RecordView record) {}

    /** @param expired whether its expiry had passed, in the region, when it was given; null where no expiry is recorded */
    public record DrugUseView(
            UUID id,
            String amount,
            String givenBy,
            @Nullable String batch,
            @Nullable LocalDate expiresOn,
            @Nullable Boolean expired,
            Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    @ApplicationScoped
    static class Orders implements PanacheRepositoryBase<DrugOrder, UUID> {}

    @ApplicationScoped
    static class Uses implements PanacheRepositoryBase<DrugUse, UUID> {}

    private final Orders orders;
    private final Uses uses;
    private final RegionService region;
    private final RecordViews records;
    private final Clock clock;

    DrugOrders(Orders orders, Uses uses, RegionService region, RecordViews records, Clock clock) {
        this.orders = orders;
        this.uses = uses;
        this.region = region;
        this.records = records;
        this.clock = clock;
    }

    void order(UUID visitId, ClinicService.DrugOrderEntry entry) {
        Instant at = Corrections.passed("at", entry.at(), clock);
        LocalDate from = entry.from() == null ? day(at) : entry.from();
        if (entry.until() != null && entry.until().isBefore(from)) {
            throw InvalidException.of("until", "It would end before it began.", "a day from " + from + " on");
        }
        orders.persistAndFlush(new DrugOrder(visitId, entry, at, from));
    }

    void give(UUID visitId, UUID orderId, ClinicService.DrugUseEntry entry) {
        DrugOrder order = require(visitId, orderId);
        order.requireStanding();
        if (order.controlled) {
            needed("batch", entry.batch());
            needed("expiresOn", entry.expiresOn());
        }
        Instant at = Corrections.passed("at", entry.at(), clock);
        if (at.isBefore(Objects.requireNonNull(order.happenedAt()))) {
            throw InvalidException.of(
                    "at", "That was before it was ordered.", "an instant from " + order.happenedAt() + " on");
        }
        uses.persistAndFlush(new DrugUse(order, entry, at));
    }

    private static void needed(String field, @Nullable Object value) {
        if (value == null || value.toString().isBlank()) {
            throw InvalidException.of(
                    field, "This drug is controlled, and each use is accounted for.", "as printed on what was used");
        }
    }

    void withdraw(UUID visitId, UUID orderId, @Nullable UUID useId, String reason) {
        DrugOrder order = require(visitId, orderId);
        if (useId == null) {
            order.withdraw(clock.instant(), reason);
        } else {
            uses.find("id = ?1 and orderId = ?2", useId, orderId)
                    .firstResultOptional()
                    .orElseThrow(() -> new NotFoundException("use of that drug order", useId))
                    .withdraw(clock.instant(), reason);
        }
        orders.flush();
    }

    /** Orders of some visits, by visit; one without any is left out. */
    Map<UUID, List<DrugOrderView>> listByVisit(Collection<UUID> visitIds) {
        List<DrugOrder> rows = orders.list("visitId in ?1 order by id", visitIds);
        if (rows.isEmpty()) {
            return Map.of();
        }
        Map<UUID, List<DrugUse>> given =
                uses
                        .list(
                                "orderId in ?1 order by happenedAt, id",
                                rows.stream().map(DrugOrder::id).toList())
                        .stream()
                        .collect(Collectors.groupingBy(use -> use.orderId));
        return rows.stream()
                .collect(Collectors.groupingBy(
                        row -> row.visitId,
                        Collectors.mapping(
                                row -> view(row, given.getOrDefault(row.id(), List.of())), Collectors.toList())));
    }

    private DrugOrder require(UUID visitId, UUID id) {
        return orders.find("id = ?1 and visitId = ?2", id, visitId)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("drug order of that visit", id));
    }

    private LocalDate day(Instant at) {
        return at.atZone(region.zone()).toLocalDate();
    }

    private DrugOrderView view(DrugOrder row, List<DrugUse> given) {
        return new DrugOrderView(
                row.id(),
                row.drug,
                row.dose,
                row.route,
                row.times,
                row.fromDay,
                row.untilDay,
                row.controlled,
                row.vetName,
                row.vetRegistration,
                Objects.requireNonNull(row.happenedAt()),
                row.withdrawnAt,
                row.withdrawnBecause,
                given.stream().map(this::view).toList(),
                records.of(row));
    }

    private DrugUseView view(DrugUse row) {
        Instant at = Objects.requireNonNull(row.happenedAt());
        return new DrugUseView(
                row.id(),
                row.amount,
                row.givenBy,
                row.batch,
                row.expiresOn,
                row.expiresOn == null ? null : day(at).isAfter(row.expiresOn),
                at,
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }
}
