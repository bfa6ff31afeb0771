package org.culvert.exchange.annualreturn;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.exchange.annualreturn.ReturnForms.ReturnPeriod;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RefusedException;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.file.KeptFiles;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Drafts returns, and freezes those that are signed. */
@ApplicationScoped
public class AnnualReturnService {
    /**
     * A return that somebody signs.
     *
     * @param memberId whose return, or an organisation's
     * @param from first day of the period
     * @param name of whoever signs
     * @param capacity in which they sign, such as holder of the licence
     * @param signedOn on which day, after the period
     */
    public record SigningEntry(
            @NotNull UUID formId,
            @Nullable UUID memberId,
            @Nullable UUID organisationId,
            @NotNull LocalDate from,
            @NotBlank @Size(max = 200) String name,
            @NotBlank @Size(max = 200) String capacity,
            @NotNull LocalDate signedOn) {}

    /**
     * A signed return. What was signed are the octets of its document and of its table.
     *
     * @param knownAt it counts what was recorded until then
     * @param signedBy name of whoever signed; not in the octets, since people are erased and these stay
     * @param documentSha256 digest of the document (SHA-256, FIPS 180-4) in hexadecimal digits; likewise of the table
     * @param supplements how many supplements there are
     */
    public record AnnualReturnView(
            UUID id,
            UUID formId,
            String jurisdiction,
            String title,
            @Nullable UUID memberId,
            @Nullable UUID organisationId,
            LocalDate from,
            LocalDate to,
            LocalDate due,
            Instant knownAt,
            String signedBy,
            String capacity,
            LocalDate signedOn,
            String documentSha256,
            String tableSha256,
            int supplements,
            RecordView record) {}

    @ApplicationScoped
    static class Returns implements PanacheRepositoryBase<AnnualReturn, UUID> {}

    private final Returns returns;
    private final ReturnForms forms;
    private final ReturnMaker maker;
    private final ReturnRows rows;
    private final KeptFiles files;
    private final RosterService roster;
    private final RegionService regions;
    private final RecordViews records;
    private final Sight sight;
    private final EntityManager entities;
    private final Clock clock;

    AnnualReturnService(
            Returns returns,
            ReturnForms forms,
            ReturnMaker maker,
            ReturnRows rows,
            KeptFiles files,
            RosterService roster,
            RegionService regions,
            RecordViews records,
            Sight sight,
            EntityManager entities,
            Clock clock) {
        this.returns = returns;
        this.forms = forms;
        this.maker = maker;
        this.rows = rows;
        this.files = files;
        this.roster = roster;
        this.regions = regions;
        this.records = records;
        this.sight = sight;
        this.entities = entities;
        this.clock = clock;
    }

    /** A return as it would be signed now; of the past, as it would have been signed then. */
    @Transactional
    public ReturnDraft draft(UUID formId, @Nullable UUID memberId, @Nullable UUID organisationId, LocalDate from) {
        Holder holder = requireHolder(memberId, organisationId);
        ReturnForm form = forms.require(formId);
        return maker.make(form, holder, ReturnForms.period(form, from), knownAt());
    }

    /** Freezes a return. What is recorded later is told by supplements. */
    @Transactional
    public AnnualReturnView sign(SigningEntry entry) {
        Holder holder = requireHolder(entry.memberId(), entry.organisationId());
        requireMaySign(holder);
        ReturnForm form = forms.require(entry.formId());
        ReturnPeriod period = ReturnForms.period(form, entry.from());
        Instant now = now();
        requireSignable(entry.signedOn(), period.to(), now);
        ReturnDraft draft = maker.make(form, holder, period, now);
        var row = new AnnualReturn(
                form.id(),
                holder,
                period,
                now,
                entry,
                files.sealOwn(KeptFiles.JSON, FrozenText.octets(FrozenText.json(draft))),
                files.sealOwn(KeptFiles.CSV, FrozenText.octets(FrozenText.table(form, draft))));
        returns.persistAndFlush(row);
        rows.keep(row.id(), null, ReturnChanges.Counted.of(draft));
        return getReturn(row.id());
    }

    @Transactional
    public AnnualReturnView getReturn(UUID id) {
        return views(List.of(require(id))).get(0);
    }

    /** Signed returns, newest first: of those who see only their own organisation's, these. */
    @Transactional
    public Page<AnnualReturnView> listReturns(int limit, @Nullable UUID before) {
        List<AnnualReturn> found = sight.seesOwnOnly("annual-return")
                ? returns.list("id in ?1 order by id desc", sight.listOwn("annual-return", before, limit + 1, null))
                : returns.find("?1 is null or id < ?1 order by id desc", before)
                        .page(0, limit + 1)
                        .list();
        Map<UUID, AnnualReturnView> shown =
                views(found).stream().collect(Collectors.toMap(AnnualReturnView::id, view -> view));
        return Page.of(found, limit, row -> shown.get(row.id()), row -> row.id().toString());
    }

    /** What was signed, to the octet. */
    @Transactional
    public KeptFiles.Content getDocument(UUID id) {
        return files.getContent(require(id).documentFileId);
    }

    /** The table that was signed, to the octet. */
    @Transactional
    public KeptFiles.Content getTable(UUID id) {
        return files.getContent(require(id).tableFileId);
    }

    AnnualReturn require(UUID id) {
        return returns.findByIdOptional(id).orElseThrow(() -> new NotFoundException("annual return", id));
    }

    /** Holds a return until the transaction ends, so that two supplements do not cross. */
    AnnualReturn hold(UUID id) {
        entities.createNativeQuery("select id from annual_returns where id = ?1 for update")
                .setParameter(1, id)
                .getResultList();
        return require(id);
    }

    /** A carer signs for nobody else. */
    void requireMaySign(Holder holder) {
        Viewer viewer = sight.viewer();
        UUID memberId = holder.memberId();
        if (!viewer.hasAny(Role.COORDINATOR) && (memberId == null || !memberId.equals(viewer.memberId()))) {
            throw new RefusedException(
                    "That is not your return to sign.",
                    List.of("A holder signs their own; a coordinator may sign for others."));
        }
    }

    /** @throws InvalidException if nobody could have signed on a day */
    void requireSignable(LocalDate signedOn, LocalDate lastDay, Instant now) {
        LocalDate today = LocalDate.ofInstant(now, regions.zone());
        if (!today.isAfter(lastDay)) {
            throw new RefusedException(
                    "The period lasts until " + lastDay + ": what will be held at its end, nobody knows yet.",
                    List.of("Its draft can be read, and be signed from the day after on."));
        }
        if (!signedOn.isAfter(lastDay) || signedOn.isAfter(today)) {
            throw InvalidException.of(
                    "signedOn",
                    "On that day nobody could sign it.",
                    "a day after " + lastDay + ", and at the latest today");
        }
    }

    /** To the microsecond, as the database keeps it. */
    Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    /** The instant of the past that is asked for, or now. */
    Instant knownAt() {
        String asked = (String) entities.createNativeQuery("select current_setting('culvert.as_of', true)")
                .getSingleResult();
        return asked == null || asked.isEmpty()
                ? now()
                : OffsetDateTime.parse(asked).toInstant();
    }

    /** A carer asks about the own organisation and its members alone; of others there is nothing to be seen. */
    private Holder requireHolder(@Nullable UUID memberId, @Nullable UUID organisationId) {
        UUID of;
        if (memberId != null && organisationId == null) {
            of = roster.getMember(memberId).organisationId();
        } else if (organisationId != null && memberId == null) {
            of = roster.getOrganisation(organisationId).id();
        } else {
            throw InvalidException.of(
                    "memberId", "A return is of exactly one holder.", "either memberId or organisationId");
        }
        Viewer viewer = sight.viewer();
        if (!viewer.hasAny(Role.OFFICER, Role.COORDINATOR) && !of.equals(viewer.organisationId())) {
            throw new NotFoundException("holder", memberId == null ? of : memberId);
        }
        return new Holder(memberId, organisationId, null);
    }

    private List<AnnualReturnView> views(List<AnnualReturn> found) {
        records.lookUp(found);
        Map<UUID, ReturnForm> formById = found.stream()
                .map(row -> row.formId)
                .distinct()
                .map(forms::require)
                .collect(Collectors.toMap(ReturnForm::id, form -> form));
        Map<UUID, Integer> supplements = found.isEmpty()
                ? Map.of()
                : entities
                        .createQuery(
                                "select s.returnId, count(s) from ReturnSupplement s where s.returnId in ?1 group by s.returnId",
                                Object[].class)
                        .setParameter(1, found.stream().map(AnnualReturn::id).toList())
                        .getResultList()
                        .stream()
                        .collect(Collectors.toMap(count -> (UUID) count[0], count -> ((Number) count[1]).intValue()));
        return found.stream()
                .map(row -> view(row, formById, supplements.getOrDefault(row.id(), 0)))
                .toList();
    }

    private AnnualReturnView view(AnnualReturn row, Map<UUID, ReturnForm> formById, int supplements) {
        ReturnForm form = formById.getOrDefault(row.formId, forms.require(row.formId));
        return new AnnualReturnView(
                row.id(),
                row.formId,
                form.jurisdiction,
                form.title,
                row.memberId,
                row.organisationId,
                row.fromDay,
                row.toDay,
                row.dueOn,
                row.knownAt,
                row.signedBy,
                row.capacity,
                row.signedOn,
                HexFormat.of().formatHex(row.documentSha256),
                HexFormat.of().formatHex(row.tableSha256),
                supplements,
                records.of(row));
    }
}
