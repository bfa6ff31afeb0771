package org.culvert.release.rules;

/** A ground on which a rule lets the found place be left. */
public record Ground(String key, String words) {}
