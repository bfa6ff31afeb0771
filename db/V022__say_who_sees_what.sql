-- Who sees what: whose a record is, and how strictly the place of a record is kept. The tables of who-sees-what.md name
-- these views.

-- Incidents that stand joined to one another, each with every other and with itself.
CREATE VIEW joined_incidents AS
WITH RECURSIVE up (incident_id, above_id) AS (
    SELECT joined_incident_id, kept_incident_id FROM incident_joins WHERE undone_at IS NULL
    UNION
    SELECT up.incident_id, j.kept_incident_id
    FROM up JOIN incident_joins j ON j.joined_incident_id = up.above_id AND j.undone_at IS NULL
), top (incident_id, root_id) AS (
    SELECT incident_id, above_id FROM up
    WHERE NOT EXISTS (SELECT 1 FROM incident_joins j WHERE j.joined_incident_id = up.above_id AND j.undone_at IS NULL)
), tree (incident_id, root_id) AS (
    SELECT incident_id, root_id FROM top UNION SELECT root_id, root_id FROM top
)
SELECT a.incident_id, b.incident_id AS other_id FROM tree a JOIN tree b ON b.root_id = a.root_id;

-- Organisations whose members went out to an incident, or are to.
CREATE VIEW attending_organisations AS
SELECT a.incident_id, m.organisation_id
FROM attendances a
JOIN attendance_people p ON p.attendance_id = a.id
JOIN members m ON m.id = p.member_id;

-- A case is its holders', now or before; of whoever is asked to take the animal over; of where it is; of who went out to
-- it, treated it, runs its clutch, has its body or let it go; and of who entered it.
CREATE VIEW case_holders AS
SELECT c.case_id AS id, coalesce(c.holder_organisation_id, m.organisation_id) AS organisation_id
FROM custody_links c LEFT JOIN members m ON m.id = c.holder_member_id
UNION ALL
SELECT h.case_id, coalesce(h.taker_organisation_id, m.organisation_id)
FROM hand_overs h LEFT JOIN members m ON m.id = h.taker_member_id
WHERE h.accepted_at IS NULL AND h.refused_at IS NULL
UNION ALL
SELECT w.case_id, coalesce(w.organisation_id, m.organisation_id)
FROM whereabouts w LEFT JOIN members m ON m.id = w.member_id
WHERE NOT EXISTS (SELECT 1 FROM whereabouts l
                  WHERE l.case_id = w.case_id AND (l.happened_at, l.id) > (w.happened_at, w.id))
UNION ALL
SELECT b.case_id, coalesce(b.holder_organisation_id, m.organisation_id)
FROM bodies b LEFT JOIN members m ON m.id = b.holder_member_id
UNION ALL
SELECT c.id, a.organisation_id
FROM cases c JOIN attending_organisations a ON a.incident_id = c.incident_id
UNION ALL
SELECT c.id, a.organisation_id
FROM cases c
JOIN joined_incidents j ON j.incident_id = c.incident_id
JOIN attending_organisations a ON a.incident_id = j.other_id
UNION ALL
SELECT v.case_id, v.organisation_id FROM visits v
UNION ALL
SELECT k.mother_case_id, coalesce(l.holder_organisation_id, m.organisation_id)
FROM clutches k
JOIN clutch_custody_links l ON l.clutch_id = k.id
LEFT JOIN members m ON m.id = l.holder_member_id
UNION ALL
SELECT a.case_id, m.organisation_id
FROM released_animals a
JOIN releases r ON r.id = a.release_id
JOIN members m ON m.id = r.released_by_member_id
UNION ALL
SELECT c.id, coalesce(a.organisation_id, m.organisation_id)
FROM cases c
JOIN accounts a ON a.id = c.recorded_by
LEFT JOIN members m ON m.id = a.member_id;

CREATE VIEW incident_holders AS
SELECT incident_id AS id, organisation_id FROM attending_organisations
UNION ALL
SELECT j.incident_id, a.organisation_id
FROM joined_incidents j JOIN attending_organisations a ON a.incident_id = j.other_id
UNION ALL
SELECT c.incident_id, h.organisation_id FROM cases c JOIN case_holders h ON h.id = c.id
UNION ALL
SELECT j.incident_id, h.organisation_id
FROM joined_incidents j
JOIN cases c ON c.incident_id = j.other_id
JOIN case_holders h ON h.id = c.id;

CREATE VIEW call_holders AS
SELECT c.id, h.organisation_id FROM calls c JOIN incident_holders h ON h.id = c.incident_id;
CREATE VIEW attendance_holders AS
SELECT a.id, h.organisation_id FROM attendances a JOIN incident_holders h ON h.id = a.incident_id;
CREATE VIEW hand_over_holders AS
SELECT o.id, h.organisation_id FROM hand_overs o JOIN case_holders h ON h.id = o.case_id;
CREATE VIEW visit_holders AS
SELECT v.id, h.organisation_id FROM visits v JOIN case_holders h ON h.id = v.case_id;
CREATE VIEW placement_holders AS
SELECT p.id, h.organisation_id FROM placements p JOIN case_holders h ON h.id = p.case_id;
CREATE VIEW clutch_holders AS
SELECT k.id, h.organisation_id FROM clutches k JOIN case_holders h ON h.id = k.mother_case_id;
CREATE VIEW assessment_holders AS
SELECT a.id, h.organisation_id FROM assessments a JOIN case_holders h ON h.id = a.case_id;
CREATE VIEW unsuitable_holders AS
SELECT u.id, h.organisation_id FROM unsuitabilities u JOIN case_holders h ON h.id = u.case_id;
CREATE VIEW release_holders AS
SELECT a.release_id AS id, h.organisation_id FROM released_animals a JOIN case_holders h ON h.id = a.case_id;

CREATE VIEW animal_holders AS
SELECT c.animal_id AS id, h.organisation_id FROM cases c JOIN case_holders h ON h.id = c.id;
CREATE VIEW whereabouts_holders AS
SELECT w.id, h.organisation_id FROM whereabouts w JOIN case_holders h ON h.id = w.case_id;
CREATE VIEW join_holders AS
SELECT j.id, h.organisation_id FROM incident_joins j JOIN incident_holders h ON h.id = j.kept_incident_id;

-- A record of any kind, for its revisions.
CREATE VIEW record_holders AS
SELECT id, organisation_id FROM case_holders
UNION ALL SELECT id, organisation_id FROM incident_holders
UNION ALL SELECT id, organisation_id FROM call_holders
UNION ALL SELECT id, organisation_id FROM attendance_holders
UNION ALL SELECT id, organisation_id FROM hand_over_holders
UNION ALL SELECT id, organisation_id FROM visit_holders
UNION ALL SELECT id, organisation_id FROM placement_holders
UNION ALL SELECT id, organisation_id FROM clutch_holders
UNION ALL SELECT id, organisation_id FROM assessment_holders
UNION ALL SELECT id, organisation_id FROM unsuitable_holders
UNION ALL SELECT id, organisation_id FROM release_holders
UNION ALL SELECT id, organisation_id FROM animal_holders
UNION ALL SELECT id, organisation_id FROM whereabouts_holders
UNION ALL SELECT id, organisation_id FROM join_holders
UNION ALL SELECT r.id, h.organisation_id FROM custody_links r JOIN case_holders h ON h.id = r.case_id
UNION ALL SELECT r.id, h.organisation_id FROM fates r JOIN case_holders h ON h.id = r.case_id
UNION ALL SELECT r.id, h.organisation_id FROM bodies r JOIN case_holders h ON h.id = r.case_id
UNION ALL SELECT r.id, h.organisation_id FROM reported_animals r JOIN call_holders h ON h.id = r.call_id
UNION ALL SELECT r.id, h.organisation_id FROM findings r JOIN visit_holders h ON h.id = r.visit_id
UNION ALL SELECT r.id, h.organisation_id FROM film_readings r JOIN visit_holders h ON h.id = r.visit_id
UNION ALL SELECT r.id, h.organisation_id FROM procedures r JOIN visit_holders h ON h.id = r.visit_id
UNION ALL SELECT r.id, h.organisation_id FROM discharges r JOIN visit_holders h ON h.id = r.visit_id
UNION ALL SELECT r.id, h.organisation_id FROM egg_recoveries r JOIN clutch_holders h ON h.id = r.clutch_id
UNION ALL SELECT r.id, h.organisation_id FROM hatchings r JOIN clutch_holders h ON h.id = r.clutch_id;

CREATE INDEX custody_links_by_holder ON custody_links (holder_organisation_id);
CREATE INDEX custody_links_by_member ON custody_links (holder_member_id);
CREATE INDEX attendance_people_by_member ON attendance_people (member_id);
CREATE INDEX members_by_organisation ON members (organisation_id);
CREATE INDEX clutch_custody_links_by_clutch ON clutch_custody_links (clutch_id);
CREATE INDEX hand_overs_by_case ON hand_overs (case_id);

-- The categories of sensitivity_grid are those of A. D. Chapman, Current Best Practices for Generalizing Sensitive Species
-- Occurrence Data, GBIF 2020, doi:10.15468/doc-5jp4-5g10. As a number to compare by: 0 is not sensitive, 360 is withheld,
-- and between them the side of the grid in degrees.
CREATE FUNCTION strictness(grid double precision) RETURNS double precision LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE WHEN grid IS NULL THEN 0 WHEN grid = 0 THEN 360 ELSE grid END
$$;

-- What nobody knows counts as the strictest there is among the animals of this region.
CREATE VIEW unknown_strictness AS
SELECT coalesce(max(strictness(sensitivity_grid)), 0) AS strictness FROM taxa;

CREATE VIEW taxon_group_strictness AS
SELECT g.id, coalesce((SELECT max(strictness(t.sensitivity_grid)) FROM taxa t WHERE t.taxon_group_id = g.id),
                      (SELECT strictness FROM unknown_strictness)) AS strictness
FROM taxon_groups g;

-- A taxon above the species may be any species of its group.
CREATE VIEW taxon_strictness AS
SELECT t.id, CASE WHEN t.taxon_rank IN ('species', 'subspecies') THEN strictness(t.sensitivity_grid)
                  ELSE greatest(strictness(t.sensitivity_grid), g.strictness) END AS strictness
FROM taxa t JOIN taxon_group_strictness g ON g.id = t.taxon_group_id;

CREATE VIEW told_strictness AS
SELECT c.incident_id, coalesce(t.strictness, g.strictness, (SELECT strictness FROM unknown_strictness)) AS strictness
FROM calls c
JOIN reported_animals a ON a.call_id = c.id
LEFT JOIN taxon_strictness t ON t.id = a.taxon_id
LEFT JOIN taxon_group_strictness g ON g.id = a.taxon_group_id
UNION ALL
SELECT c.incident_id, t.strictness
FROM cases c JOIN animals a ON a.id = c.animal_id JOIN taxon_strictness t ON t.id = a.taxon_id;

-- The strictest of all animals told of or seen there counts for the place.
CREATE VIEW incident_strictness AS
SELECT i.id, greatest(coalesce(own.strictness, (SELECT strictness FROM unknown_strictness)), joined.strictness)
    AS strictness
FROM incidents i
LEFT JOIN LATERAL (SELECT max(s.strictness) AS strictness FROM told_strictness s WHERE s.incident_id = i.id) own ON true
LEFT JOIN LATERAL (SELECT max(s.strictness) AS strictness
                   FROM joined_incidents j JOIN told_strictness s ON s.incident_id = j.other_id
                   WHERE j.incident_id = i.id) joined ON true;

CREATE VIEW call_strictness AS
SELECT c.id, s.strictness FROM calls c JOIN incident_strictness s ON s.id = c.incident_id;
CREATE VIEW case_strictness AS
SELECT c.id, s.strictness FROM cases c JOIN incident_strictness s ON s.id = c.incident_id;
CREATE VIEW assessment_strictness AS
SELECT a.id, s.strictness FROM assessments a JOIN case_strictness s ON s.id = a.case_id;
CREATE VIEW release_strictness AS
SELECT a.release_id AS id, s.strictness FROM released_animals a JOIN case_strictness s ON s.id = a.case_id;

-- A site is kept as strictly as any animal that it is for or that was let go there; for whom nobody said counts as unknown.
CREATE VIEW site_strictness AS
SELECT s.id, g.strictness
FROM release_sites s
JOIN taxon_groups k ON s.taxon_groups @> to_jsonb(k.key)
JOIN taxon_group_strictness g ON g.id = k.id
UNION ALL
SELECT s.id, u.strictness FROM release_sites s CROSS JOIN unknown_strictness u WHERE s.taxon_groups = '[]'
UNION ALL
SELECT r.site_id, x.strictness FROM releases r JOIN release_strictness x ON x.id = r.id WHERE r.site_id IS NOT NULL;
