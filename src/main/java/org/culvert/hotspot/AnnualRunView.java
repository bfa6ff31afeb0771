package org.culvert.hotspot;

import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;

/**
 * A declared annual run as others see it.
 *
 * @param sentence what all its runs together claim
 * @param runs one a cell, in the order in which they were declared
 * @param exploratoryRunsSoFar how many exploratory runs had been asked for on this server when this was read
 */
public record AnnualRunView(
        UUID id,
        String plan,
        int cells,
        String sentence,
        int done,
        long exploratoryRunsSoFar,
        List<RunView> runs,
        RecordView record) {}
