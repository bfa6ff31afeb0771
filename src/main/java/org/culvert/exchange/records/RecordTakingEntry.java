package org.culvert.exchange.records;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/**
 * Which rows of a trial are taken in.
 *
 * @param which {@code all}, which is refused while rows are refused or in doubt that nobody has decided on, or {@code good}
 * @param doubtful whether rows in doubt are taken too
 * @param oneIncident whether rows that perhaps tell of one animal become calls of one incident; otherwise each is an incident
 * @param reason why, in the words of whoever decides it
 */
public record RecordTakingEntry(
        @NotNull TakingService.Which which,
        boolean doubtful,
        boolean oneIncident,
        @NotBlank @Size(max = 2000) String reason) {}
