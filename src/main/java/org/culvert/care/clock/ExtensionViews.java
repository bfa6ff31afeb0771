package org.culvert.care.clock;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordViews;

/** Shows what was granted and who was told. */
@ApplicationScoped
class ExtensionViews {
    @ApplicationScoped
    static class Extensions implements PanacheRepositoryBase<ClockExtension, UUID> {}

    @ApplicationScoped
    static class Notices implements PanacheRepositoryBase<ClockNotice, UUID> {}

    private final Extensions extensions;
    private final Notices notices;
    private final RecordViews records;

    ExtensionViews(Extensions extensions, Notices notices, RecordViews records) {
        this.extensions = extensions;
        this.notices = notices;
        this.records = records;
    }

    /** Those that were withdrawn among them, the newest first. */
    List<ClockViews.ClockExtensionView> extensionsOf(UUID caseId) {
        return extensions.list("caseId = ?1 order by happenedAt desc, id desc", caseId).stream()
                .map(this::view)
                .toList();
    }

    /** The same of notices. */
    List<ClockViews.ClockNoticeView> noticesOf(UUID caseId) {
        return notices.list("caseId = ?1 order by happenedAt desc, id desc", caseId).stream()
                .map(this::view)
                .toList();
    }

    ClockViews.ClockExtensionView view(ClockExtension row) {
        ClockEntries.ClockOrder order = row.order();
        return new ClockViews.ClockExtensionView(
                row.id(),
                row.caseId,
                row.limitId,
                row.untilAt,
                row.ground,
                order == null
                        ? null
                        : new ClockViews.ClockOrderView(order.authority(), order.number(), order.date(), order.words()),
                row.grantedBy,
                row.grantedAt(),
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }

    ClockViews.ClockNoticeView view(ClockNotice row) {
        return new ClockViews.ClockNoticeView(
                row.id(),
                row.caseId,
                row.limitId,
                row.told,
                row.how,
                row.reference,
                row.at(),
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }
}
