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
 * A declared annual run as it is asked for: groups and seasons that were decided on before anyone looked, which share one
 * error rate. What is left out gets the usual value of a run.
 *
 * @param periodFrom first day
 * @param periodTo last day, included
 * @param plan where it was decided, by whom and when
 * @param cells the groups and seasons, each a run of its own
 * @param reachMetres half-width of the kernel along the roads
 * @param sigmaMetres standard deviation of the heat kernel, instead of a reach
 * @param seed of the random generators
 * @param alpha chance of naming anything in any of the cells where only chance is at work; 0.05
 */
public record AnnualRunEntry(
        @NotNull LocalDate periodFrom,
        @NotNull LocalDate periodTo,
        @NotBlank @Size(max = 1000) String plan,

        @NotNull @Size(min = 1, max = 100) List<@NotNull @Valid Cell> cells,

        @Nullable @DecimalMin("20") @DecimalMax("5000") Double reachMetres,

        @Nullable @DecimalMin("10") @DecimalMax("2500") Double sigmaMetres,
        @Nullable Long seed,

        @Nullable @DecimalMin("0.0001") @DecimalMax("0.5") Double alpha) {
    /**
     * A group in a season.
     *
     * @param taxonGroup key of a group of animals; all animals when left out
     * @param months months of the year that count; all when left out
     * @param seasonWindow name of a season window of the group, instead of months
     */
    public record Cell(
            @Nullable @Size(max = 100) String taxonGroup,

            @Nullable @Size(min = 1, max = 12) List<@NotNull @Min(1) @Max(12) Integer> months,

            @Nullable @Size(max = 100) String seasonWindow) {}
}
