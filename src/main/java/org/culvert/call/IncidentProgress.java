package org.culvert.call;

import java.util.Collection;
import java.util.Map;
import java.util.UUID;

/** How far incidents have got; told by the room that sends people out. What it does not name is {@code logged}. */
public interface IncidentProgress {
    Map<UUID, String> progressOf(Collection<UUID> incidentIds);
}
