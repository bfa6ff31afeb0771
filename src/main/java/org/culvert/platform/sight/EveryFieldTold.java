package org.culvert.platform.sight;

/**
 * A view that tells null where the asker may see a field of other records and not of this one: programs read off the first
 * records which fields there are.
 */
public interface EveryFieldTold {}
