package org.culvert.care.health.alike;

import java.time.LocalDate;
import java.util.UUID;
import org.culvert.geo.Position;

/** One animal seen with a syndrome. */
public record Report(UUID id, UUID animalId, Position place, LocalDate day) {}
