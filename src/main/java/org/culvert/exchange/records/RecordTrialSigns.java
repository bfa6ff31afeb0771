package org.culvert.exchange.records;

import java.util.List;

/** What a whole file shows. */
public record RecordTrialSigns(List<RecordFindingView> findings) {}
