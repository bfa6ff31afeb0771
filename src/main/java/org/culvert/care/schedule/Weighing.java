package org.culvert.care.schedule;

import java.time.Instant;

/** @param grams more than 0 */
public record Weighing(Instant at, double grams) {}
