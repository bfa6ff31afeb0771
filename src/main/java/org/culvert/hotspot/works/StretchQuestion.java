package org.culvert.hotspot.works;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A question about any stretch of a road. What is left out gets its usual value; a business case has none.
 *
 * @param road label of the road on the current network
 * @param yearFrom first calendar year of the records; four years before the last when left out
 * @param yearTo last calendar year, which is over; the last one when left out
 * @param months months of the year that count, 1 to 12; all when left out
 * @param chosenBeforeLooking whether it was chosen before anyone looked at the records; null where nobody says
 * @param windowMetres length of the windows of the same class that say what is usual; 1000
 * @param worksKind tell of what such works have done elsewhere; of all when left out
 * @param reductionPercent how much works would have to prevent, for the chance of seeing it; 50
 * @param businessCase what works here would be worth
 */
public record StretchQuestion(
        @NotBlank @Size(max = WorksService.LONGEST_ROAD) String road,

        @NotNull @DecimalMin("-1000000") @DecimalMax("10000000")
        Double fromChainageMetres,

        @NotNull @DecimalMin("-1000000") @DecimalMax("10000000")
        Double toChainageMetres,

        @Nullable @Min(1900) @Max(2200) Integer yearFrom,
        @Nullable @Min(1900) @Max(2200) Integer yearTo,
        @Nullable @Size(max = 100) String taxonGroup,

        @Nullable @Size(min = 1, max = 12) List<@NotNull @Min(1) @Max(12) Integer> months,

        @Nullable @Size(max = 100) String seasonWindow,
        @Nullable Boolean chosenBeforeLooking,

        @Nullable @DecimalMin("100") @DecimalMax("10000") Double windowMetres,

        @Nullable WorksKind worksKind,

        @Nullable @DecimalMin("1") @DecimalMax("100") Double reductionPercent,

        @Nullable @Valid BusinessCase businessCase) {
    /**
     * What a business case rests on; all of it is the asker's.
     *
     * @param collisionsPerYear without works; what is expected of the stretch, with its interval, when left out
     * @param yearlyChange by which share collisions change from year to year without works
     * @param shareAvoided by the works, such as 0 to 0.94 and 0.53 at best
     * @param discountRate a year, such as 0.04
     */
    public record BusinessCase(
            @NotBlank @Size(max = 20) String currency,
            @NotNull @Min(1900) @Max(2200) Integer priceYear,
            @Nullable @Valid Bounds collisionsPerYear,

            @Nullable @DecimalMin("-0.5") @DecimalMax("0.5") Double yearlyChange,

            @NotNull @Valid Bounds shareAvoided,
            @NotEmpty @Size(max = 50) List<@NotNull @Valid UnitCost> unitCosts,
            @NotNull @Valid Bounds building,
            @NotNull @Valid Bounds upkeepPerYear,
            @Nullable @Size(max = 100) List<@NotNull @Valid Renewal> renewals,
            @NotNull @Valid Bounds discountRate,
            @NotNull @Min(1) @Max(200) Integer lifeYears) {}

    /** A figure that its giver is not sure of; without low and high it is known. */
    public record Bounds(
            @Nullable @DecimalMin("-1e15") @DecimalMax("1e15")
            Double low,

            @NotNull @DecimalMin("-1e15") @DecimalMax("1e15")
            Double best,

            @Nullable @DecimalMin("-1e15") @DecimalMax("1e15")
            Double high) {}

    /** What a collision costs, of one kind of cost. */
    public record UnitCost(
            @NotBlank @Size(max = 200) String name,
            @NotNull @Valid Bounds perCollision,
            @NotBlank @Size(max = 1000) String source) {}

    /** A payment at the end of a year of the works' life. */
    public record Renewal(
            @NotNull @Min(1) @Max(200) Integer year,
            @NotNull @Valid Bounds cost) {}
}
