package org.culvert.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.call.IncidentProgress;

/** Derives how far an incident has got from its attendances, closings and calls; a call after the end reopens it;
 * one that was imported is as old as it was when it came in. */
@ApplicationScoped
class Progress implements IncidentProgress {
    private final EntityManager entities;

    Progress(EntityManager entities) {
        this.entities = entities;
    }

    @Override
    @Transactional
    public Map<UUID, String> progressOf(Collection<UUID> incidentIds) {
        if (incidentIds.isEmpty()) {
            return Map.of();
        }
        List<?> rows =
                entities.createNativeQuery("""
                        select i.id,
                               case
                                 when bool_or(a.ended_at is null and (p.accepted_at is not null
                                      or a.departed_at is not null or a.arrived_at is not null)) then 'underway'
                                 when bool_or(a.id is not null and a.ended_at is null) then 'offered'
                                 when greatest(max(a.ended_at), max(c.happened_at)) >= max(case when k.import_id is null then k.recorded_at else k.happened_at end)
                                   then 'closed'
                                 else 'logged'
                               end
                        from incidents i
                        left join attendances a on a.incident_id = i.id
                        left join attendance_people p on p.attendance_id = a.id and p.leads
                        left join closings c on c.incident_id = i.id
                        left join calls k on k.incident_id = i.id
                        where i.id in (:ids)
                        group by i.id
                        """).setParameter("ids", incidentIds).getResultList();
        Map<UUID, String> progress = new HashMap<>();
        for (Object row : rows) {
            Object[] columns = (Object[]) row;
            progress.put((UUID) columns[0], (String) columns[1]);
        }
        return progress;
    }
}
