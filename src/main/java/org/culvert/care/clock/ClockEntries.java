package org.culvert.care.clock;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.Change;
import org.jspecify.annotations.Nullable;

/** What goes into this room about cases. */
public final class ClockEntries {
    private ClockEntries() {}

    /**
     * An authority's order.
     *
     * @param authority which office gave it
     * @param number its number
     * @param date its day
     * @param words what it orders, in its own words
     */
    public record ClockOrder(
            @NotBlank @Size(max = 200) String authority,
            @NotBlank @Size(max = 200) String number,
            @NotNull LocalDate date,
            @NotBlank @Size(max = 4000) String words) {}

    /**
     * An extension as entered: on a ground or by an order.
     *
     * @param until its last instant
     * @param ground one of those that the limit names
     * @param grantedBy which office granted it; no person's name
     * @param grantedAt now when left out
     */
    public record ClockExtensionEntry(
            @NotNull UUID limitId,
            @NotNull Instant until,
            @Nullable @Size(max = 200) String ground,
            @Nullable @Valid ClockOrder order,
            @NotBlank @Size(max = 200) String grantedBy,
            @Nullable Instant grantedAt) {}

    /** What can be corrected of an extension that stands; a ground instead of an order, or the other way about, too. */
    public record ClockExtensionCorrection(
            Change<Instant> until,
            Change<String> ground,
            Change<ClockOrder> order,
            Change<String> grantedBy,
            Change<Instant> grantedAt,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * Open cases by their kind and when they were found.
     *
     * @param taxonGroup key of a group; left out: of any
     * @param foundFrom the first instant
     * @param foundBefore the first instant after
     */
    public record CaseSpan(
            @Nullable @Size(max = 200) String taxonGroup,
            @NotNull Instant foundFrom,
            @NotNull Instant foundBefore) {}

    /**
     * An order that extends one limit for many cases: those of a list, or those found in a span.
     *
     * @param grantedAt now when left out
     */
    public record OrderForManyEntry(
            @NotNull UUID limitId,
            @NotNull Instant until,
            @NotNull @Valid ClockOrder order,
            @NotBlank @Size(max = 200) String grantedBy,
            @Nullable Instant grantedAt,
            @Nullable @Size(min = 1, max = 1000) List<@NotNull UUID> caseIds,
            @Nullable @Valid CaseSpan found) {}

    public enum How {
        phone,
        email,
        letter,
        form,
        inPerson
    }

    /**
     * A notice to an authority.
     *
     * @param told which office was told; no person's name
     * @param reference its number of the matter
     * @param at when it was told; now when left out
     */
    public record ClockNoticeEntry(
            @NotNull UUID limitId,
            @NotBlank @Size(max = 200) String told,
            @NotNull How how,
            @Nullable @Size(max = 200) String reference,
            @Nullable Instant at) {}

    /** Why something no longer stands. */
    public record ClockWithdrawal(
            @NotBlank @Size(max = 2000) String reason) {}
}
