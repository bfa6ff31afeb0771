package org.culvert.taxon;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;
import org.jspecify.annotations.Nullable;

/** Keeps how the laws of jurisdictions list taxa: threatened, endangered, or in words of their own. */
@ApplicationScoped
public class ListingService {
    /** The word for a taxon that somebody looked for and found listed under nothing. */
    public static final String NOT_LISTED = "notListed";

    /**
     * A listing as entered.
     *
     * @param jurisdiction ISO 3166 code of a country or of a part of one
     * @param scientificName the taxon, its lower ranks included
     * @param listedAs the law's word, such as {@code threatened}, {@code endangered}, {@code sensitive} or {@code schedule4};
     *     {@code notListed} where somebody looked and it is under nothing
     * @param reviewBy the day from which it should be looked for again
     * @param validTo the first day on which it no longer holds
     */
    public record ListingEntry(
            @NotNull @Pattern(regexp = "[A-Z]{2}(-[A-Z0-9]{1,3})?", message = "must be an ISO 3166 code such as AU-VIC")
            String jurisdiction,

            @NotBlank @Size(max = 200) String scientificName,

            @NotNull
            @Size(max = 100)
            @Pattern(regexp = "[a-z][A-Za-z0-9]*", message = "must be one word such as threatened or notListed")
            String listedAs,

            @NotBlank @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {}

    /** Someone has read the source of a listing again. */
    public record ListingReview(
            @Nullable @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @Nullable LocalDate validTo,
            @NotBlank @Size(max = 2000) String reason) {}

    /** A listing as kept. */
    public record SpeciesListingView(
            UUID id,
            String jurisdiction,
            String scientificName,
            String listedAs,
            String source,
            LocalDate readOn,
            LocalDate reviewBy,
            LocalDate validFrom,
            @Nullable LocalDate validTo,
            RecordView record) {}

    /** Listings of one day, to be asked about many taxa. */
    public record Listings(List<SpeciesListingView> rows) {
        /**
         * Whether a taxon is listed as one of some words: null where that is not known, since no row is of it, or since it is
         * known only to a rank below which some are listed.
         */
        public @Nullable Boolean isListed(String scientificName, Collection<String> words) {
            boolean told = false;
            for (SpeciesListingView row : rows) {
                if (isOf(row.scientificName(), scientificName)) {
                    told = true;
                    if (words.contains(row.listedAs())) {
                        return true;
                    }
                } else if (isOf(scientificName, row.scientificName()) && words.contains(row.listedAs())) {
                    return null;
                }
            }
            return told ? false : null;
        }

        private static boolean isOf(String wider, String name) {
            return name.equals(wider) || name.startsWith(wider + " ");
        }
    }

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<SpeciesListing, UUID> {}

    @Produces
    @Singleton
    static TagSource ofListing(EntityManager entities, ListingService listings) {
        return new RowTag("species-listing", "species_listings", entities, listings::getListing);
    }

    private final Rows rows;
    private final RecordViews records;

    ListingService(Rows rows, RecordViews records) {
        this.rows = rows;
        this.records = records;
    }

    @Transactional
    public SpeciesListingView createListing(ListingEntry entry) {
        requireDays(entry.readOn(), entry.reviewBy(), entry.validFrom(), entry.validTo());
        SpeciesListing row = SpeciesListing.of(entry);
        rows.persistAndFlush(row);
        return view(row);
    }

    /** Records that the source was read again, and on what day it wants reading next. */
    @Transactional
    public SpeciesListingView review(UUID id, ListingReview review) {
        SpeciesListing row = require(id);
        requireDays(review.readOn(), review.reviewBy(), row.validFrom, review.validTo());
        row.review(review);
        rows.flush();
        return view(row);
    }

    @Transactional
    public SpeciesListingView getListing(UUID id) {
        return view(require(id));
    }

    /** All listings, those of other days too, in a stable order. */
    @Transactional
    public List<SpeciesListingView> listListings() {
        return views(rows.list("order by jurisdiction, scientificName, id"));
    }

    /** What holds on a day in a jurisdiction, what its country says included. */
    @Transactional
    public Listings listingsOn(LocalDate day, String jurisdiction) {
        return new Listings(views(rows.list(
                "validFrom <= ?1 and (validTo is null or validTo > ?1) and (jurisdiction = ?2 or jurisdiction = ?3)",
                day,
                jurisdiction,
                jurisdiction.substring(0, 2))));
    }

    private static void requireDays(
            LocalDate readOn, LocalDate reviewBy, LocalDate validFrom, @Nullable LocalDate validTo) {
        if (!reviewBy.isAfter(readOn)) {
            throw InvalidException.of("reviewBy", "It would be due at once.", "a day after readOn");
        }
        if (validTo != null && !validTo.isAfter(validFrom)) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day after " + validFrom);
        }
    }

    private SpeciesListing require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("species listing", id));
    }

    private List<SpeciesListingView> views(List<SpeciesListing> listings) {
        records.lookUp(listings);
        return listings.stream().map(this::view).toList();
    }

    private SpeciesListingView view(SpeciesListing row) {
        return new SpeciesListingView(
                row.id(),
                row.jurisdiction,
                row.scientificName,
                row.listedAs,
                row.source,
                row.readOn,
                row.reviewBy,
                row.validFrom,
                row.validTo,
                records.of(row));
    }
}
