-- What incident_strictness says of one incident, for whoever asks of all of them: the animals are gone through once, where
-- that view would go through them for each.
CREATE VIEW every_incident_strictness AS
WITH told AS MATERIALIZED (
    SELECT incident_id, max(strictness) AS strictness FROM told_strictness GROUP BY incident_id),
joined AS (
    SELECT j.incident_id, max(t.strictness) AS strictness
    FROM joined_incidents j JOIN told t ON t.incident_id = j.other_id
    GROUP BY j.incident_id)
SELECT i.id, greatest(coalesce(t.strictness, (SELECT strictness FROM unknown_strictness)), j.strictness) AS strictness
FROM incidents i
LEFT JOIN told t ON t.incident_id = i.id
LEFT JOIN joined j ON j.incident_id = i.id;
