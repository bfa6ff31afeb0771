package org.culvert.release.rules;

/**
 * Someone found the place where the animal was found unsuitable.
 *
 * @param ground key of the ground
 * @param words what was seen, by whom and when
 */
public record Unsuitability(String ground, String words) {}
