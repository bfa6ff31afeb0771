package org.culvert.hotspot;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A hotspot run as it is asked for. What is left out gets its usual value.
 *
 * @param periodFrom first day
 * @param periodTo last day, included
 * @param months months of the year that count, 1 to 12; all when left out
 * @param seasonWindow name of a season window of the taxon group, instead of months
 * @param taxonGroup key of a group of animals; all animals when left out
 * @param owner show the stretches of this owner of roads only; the search is made on the whole network
 * @param reachMetres half-width of the kernel along the roads; 500
 * @param sigmaMetres standard deviation of the heat kernel along the roads, instead of a reach: smoother, and slower
 * @param pieceMetres how finely the roads are cut; a tenth of the reach, between 10 and 100
 * @param simulations how many sets are simulated; 999
 * @param seed of the random generators; 1
 * @param chance {@code per-all-reports}, which is usual for a taxon group; {@code per-other-seasons} of a group within its
 *     own year; {@code per-traffic-and-class}, which is usual for all animals; {@code per-kilometre}; each of these two also
 *     {@code -in-patches} of road that differ as much as the records let them
 * @param alpha chance of naming anything where only chance is at work; 0.05
 * @param minimumIncidents a stretch with fewer is not named; 3
 * @param largestUncertaintyMetres an incident whose place is less sure is left out; twice the reach
 * @param declaration what makes this one the declared run; without it the run is exploratory
 * @param alsoAsk what else to compute, which takes longer: {@code persistence} (the same search in moving windows of three
 *     years), {@code sensitivity} (at half and at twice the bandwidth), {@code secondary} (other methods, for comparison);
 *     none when left out
 */
public record RunEntry(
        @NotNull LocalDate periodFrom,
        @NotNull LocalDate periodTo,

        @Nullable @Size(min = 1, max = 12) List<@NotNull @Min(1) @Max(12) Integer> months,

        @Nullable @Size(max = 100) String seasonWindow,
        @Nullable @Size(max = 100) String taxonGroup,
        @Nullable @Size(max = 300) String owner,

        @Nullable @DecimalMin("20") @DecimalMax("5000") Double reachMetres,

        @Nullable @DecimalMin("10") @DecimalMax("2500") Double sigmaMetres,

        @Nullable @DecimalMin("5") @DecimalMax("1000") Double pieceMetres,

        @Nullable @Min(19) @Max(99_999) Integer simulations,
        @Nullable Long seed,
        @Nullable @Size(max = 200) String chance,

        @Nullable @DecimalMin("0.0001") @DecimalMax("0.5") Double alpha,

        @Nullable @Min(1) @Max(1000) Integer minimumIncidents,

        @Nullable @DecimalMin("1") @DecimalMax("10000") Double largestUncertaintyMetres,

        @Nullable @Valid Declaration declaration,

        @Nullable @Size(max = 3) List<@NotNull @Size(max = 100) String> alsoAsk) {
    /**
     * A run that was decided on before anyone looked, with all the others that belong to it.
     *
     * @param cells how many runs (groups times seasons) were decided on together: each is made at alpha divided by it, so
     *     that all of them together keep alpha
     * @param plan where it was decided, by whom and when
     */
    public record Declaration(
            @Min(1) @Max(1000) int cells,
            @NotBlank @Size(max = 1000) String plan) {}
}
