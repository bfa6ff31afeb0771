package org.culvert.hotspot.stats.season;

/**
 * What one test says.
 *
 * @param test its name
 * @param statistic its statistic, as the test's method says
 * @param p the chance of a statistic at least as great where the directions come from all around alike
 * @param pBy by what formula or simulation p was got, and where that is from
 */
public record Verdict(String test, double statistic, double p, String pBy) {}
