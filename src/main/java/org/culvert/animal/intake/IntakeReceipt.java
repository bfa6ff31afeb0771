package org.culvert.animal.intake;

import java.util.List;

/** What came of a form, in the order of its animals. */
public record IntakeReceipt(List<SurgeIntakeView> animals) {}
