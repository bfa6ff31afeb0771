package org.culvert.exchange.annualreturn;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.file.KeptFiles;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Says what changed since a return was signed, and freezes that too. */
@ApplicationScoped
public class SupplementService {
    /**
     * A supplement that somebody signs.
     *
     * @param reason why it was recorded only now
     */
    public record SupplementEntry(
            @NotBlank @Size(max = 2000) String reason,
            @NotBlank @Size(max = 200) String name,
            @NotBlank @Size(max = 200) String capacity,
            @NotNull LocalDate signedOn) {}

    /**
     * A signed supplement.
     *
     * @param number the first is 1
     * @param knownAt it tells what was recorded until then
     */
    public record ReturnSupplementView(
            UUID id,
            UUID returnId,
            int number,
            Instant knownAt,
            String reason,
            String signedBy,
            String capacity,
            LocalDate signedOn,
            String documentSha256,
            String tableSha256,
            RecordView record) {}

    @ApplicationScoped
    static class Supplements implements PanacheRepositoryBase<ReturnSupplement, UUID> {}

    private final Supplements supplements;
    private final AnnualReturnService returns;
    private final ReturnForms forms;
    private final ReturnMaker maker;
    private final ReturnRows rows;
    private final KeptFiles files;
    private final RecordViews records;

    SupplementService(
            Supplements supplements,
            AnnualReturnService returns,
            ReturnForms forms,
            ReturnMaker maker,
            ReturnRows rows,
            KeptFiles files,
            RecordViews records) {
        this.supplements = supplements;
        this.returns = returns;
        this.forms = forms;
        this.maker = maker;
        this.rows = rows;
        this.files = files;
        this.records = records;
    }

    /** What a supplement would tell now. */
    @Transactional
    public ReturnChanges changes(UUID returnId) {
        AnnualReturn signed = returns.require(returnId);
        ReturnSupplement last = last(returnId);
        Instant now = returns.knownAt();
        return changes(signed, last, ReturnChanges.Counted.of(draft(signed, now)), now);
    }

    /**
     * Freezes what changed since the return, or its last supplement, was signed.
     *
     * @throws ConflictException if nothing did
     */
    @Transactional
    public ReturnSupplementView sign(UUID returnId, SupplementEntry entry) {
        AnnualReturn signed = returns.hold(returnId);
        returns.requireMaySign(signed.holder());
        ReturnSupplement last = last(returnId);
        Instant now = returns.now();
        returns.requireSignable(entry.signedOn(), signed.toDay, now);
        ReturnForm form = forms.require(signed.formId);
        ReturnChanges.Counted counted = ReturnChanges.Counted.of(draft(signed, now));
        ReturnChanges changes = changes(signed, last, counted, now);
        if (changes.isNothing()) {
            throw new ConflictException("Nothing of that return has changed since it was signed.");
        }
        var row = new ReturnSupplement(
                returnId,
                last == null ? 1 : last.number + 1,
                now,
                entry,
                files.sealOwn(KeptFiles.JSON, FrozenText.octets(FrozenText.json(changes))),
                files.sealOwn(KeptFiles.CSV, FrozenText.octets(FrozenText.table(form, changes))));
        supplements.persistAndFlush(row);
        rows.keep(returnId, row.id(), counted);
        return view(row);
    }

    @Transactional
    public List<ReturnSupplementView> listSupplements(UUID returnId) {
        returns.require(returnId);
        List<ReturnSupplement> found = supplements.list("returnId = ?1 order by number", returnId);
        records.lookUp(found);
        return found.stream().map(this::view).toList();
    }

    @Transactional
    public ReturnSupplementView getSupplement(UUID returnId, int number) {
        return view(require(returnId, number));
    }

    @Transactional
    public KeptFiles.Content getDocument(UUID returnId, int number) {
        return files.getContent(require(returnId, number).documentFileId);
    }

    @Transactional
    public KeptFiles.Content getTable(UUID returnId, int number) {
        return files.getContent(require(returnId, number).tableFileId);
    }

    private ReturnSupplement require(UUID returnId, int number) {
        return supplements
                .find("returnId = ?1 and number = ?2", returnId, number)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("supplement " + number + " of return", returnId));
    }

    private @Nullable ReturnSupplement last(UUID returnId) {
        return supplements.find("returnId = ?1 order by number desc", returnId).firstResult();
    }

    private ReturnDraft draft(AnnualReturn signed, Instant now) {
        return maker.make(forms.require(signed.formId), signed.holder(), signed.period(), now);
    }

    private ReturnChanges changes(
            AnnualReturn signed, @Nullable ReturnSupplement last, ReturnChanges.Counted counted, Instant now) {
        return ReturnChanges.between(
                signed.id(),
                last == null ? signed.knownAt : last.knownAt,
                now,
                rows.read(signed.id(), last == null ? null : last.id()),
                counted);
    }

    private ReturnSupplementView view(ReturnSupplement row) {
        return new ReturnSupplementView(
                row.id(),
                row.returnId,
                row.number,
                row.knownAt,
                row.reason,
                row.signedBy,
                row.capacity,
                row.signedOn,
                HexFormat.of().formatHex(row.documentSha256),
                HexFormat.of().formatHex(row.tableSha256),
                records.of(row));
    }
}
