-- Occurrences for others: what is public, what named recipients get under an agreement, and the record of what they got.

-- How finely figures leave the network. One row.
CREATE TABLE disclosure_settings (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    singleton         boolean     NOT NULL DEFAULT true CONSTRAINT disclosure_settings_only_one UNIQUE CHECK (singleton),
    -- counts below this are not shown to roads authorities
    smallest_count    integer     NOT NULL CONSTRAINT a_smallest_count_is_positive CHECK (smallest_count > 0),
    -- days for which nobody is shown publicly what happened
    public_delay_days integer     NOT NULL CONSTRAINT a_public_delay_is_no_less_than_none CHECK (public_delay_days >= 0),
    source            text        NOT NULL,
    happened_at       timestamptz,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports
);
INSERT INTO disclosure_settings (id, smallest_count, public_delay_days, source, recorded_at, recorded_by)
VALUES ('01920000-0000-7000-8000-000000002201', 5, 30, 'common practice, no source; set your own', now(),
        '01920000-0000-7000-8000-000000000000');

-- Public identifiers are made with this, so that they tell neither when something was entered nor what it is.
CREATE TABLE occurrence_secrets (
    singleton boolean PRIMARY KEY DEFAULT true CHECK (singleton),
    secret    text NOT NULL
);
INSERT INTO occurrence_secrets (secret) VALUES (gen_random_uuid()::text || gen_random_uuid()::text);
REVOKE UPDATE, INSERT ON occurrence_secrets FROM "${applicationRole}";

CREATE TABLE agreements (
    id                   uuid PRIMARY KEY,
    version              integer     NOT NULL DEFAULT 0,
    recipient_account_id uuid        NOT NULL REFERENCES accounts,
    purpose              text        NOT NULL,
    document_reference   text        NOT NULL,
    -- keys of groups and names of taxa; both empty: every kind
    taxon_groups         jsonb       NOT NULL DEFAULT '[]',
    scientific_names     jsonb       NOT NULL DEFAULT '[]',
    -- all empty: the whole region
    south                double precision,
    west                 double precision,
    north                double precision,
    east                 double precision,
    valid_from           date        NOT NULL,
    valid_to             date        NOT NULL,
    ended_at             timestamptz,
    ended_reason         text,
    happened_at          timestamptz,
    recorded_at          timestamptz NOT NULL,
    recorded_by          uuid        NOT NULL REFERENCES accounts,
    revised_at           timestamptz,
    revised_by           uuid REFERENCES accounts,
    revision_reason      text,
    import_id            uuid REFERENCES imports,
    CONSTRAINT an_agreement_ends_after_it_begins CHECK (valid_to >= valid_from),
    CONSTRAINT an_agreement_is_of_a_box_or_the_region CHECK (num_nonnulls(south, west, north, east) IN (0, 4)),
    CONSTRAINT an_agreements_box_is_sane CHECK (south BETWEEN -90 AND 90 AND north BETWEEN -90 AND 90 AND south < north
        AND west BETWEEN -180 AND 180 AND east BETWEEN -180 AND 180 AND west < east),
    CONSTRAINT ending_an_agreement_has_time_and_reason CHECK (num_nonnulls(ended_at, ended_reason) IN (0, 2))
);
CREATE INDEX agreements_by_recipient ON agreements (recipient_account_id);
SELECT keep_revisions('disclosure_settings'), keep_revisions('agreements');

-- Exact records that went out: to whom, under which agreement, how many, by which filter, when. Kept for ever.
CREATE TABLE disclosures (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    agreement_id    uuid        NOT NULL REFERENCES agreements,
    account_id      uuid        NOT NULL REFERENCES accounts,
    records         integer     NOT NULL CHECK (records > 0),
    filter          text        NOT NULL,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX disclosures_by_agreement ON disclosures (agreement_id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON disclosures FOR EACH ROW EXECUTE FUNCTION refuse_change();
REVOKE UPDATE ON disclosures FROM "${applicationRole}";

-- Incidents that stand by themselves, each with itself and those joined under it.
CREATE VIEW standing_incidents AS
SELECT i.id AS root_id, i.id AS incident_id FROM incidents i
WHERE NOT EXISTS (SELECT 1 FROM incident_joins j WHERE j.joined_incident_id = i.id AND j.undone_at IS NULL)
UNION ALL
SELECT j.incident_id, j.other_id FROM joined_incidents j
WHERE j.other_id <> j.incident_id
  AND NOT EXISTS (SELECT 1 FROM incident_joins d WHERE d.joined_incident_id = j.incident_id AND d.undone_at IS NULL);

-- One row for each incident that stands by itself and each kind of animal there. Two calls about one animal are one; a
-- group or an unknown kind that somebody has recognised since is not listed beside what it was recognised as.
CREATE VIEW occurrence_rows AS
WITH kinds AS (
    SELECT root_id, taxon_id, taxon_group_id, max(n) AS n FROM (
        SELECT s.root_id, a.taxon_id, coalesce(t.taxon_group_id, a.taxon_group_id) AS taxon_group_id,
               sum(a.individual_count) AS n
        FROM standing_incidents s
        JOIN calls c ON c.incident_id = s.incident_id
        JOIN reported_animals a ON a.call_id = c.id
        LEFT JOIN taxa t ON t.id = a.taxon_id
        GROUP BY s.root_id, c.id, 2, 3
        UNION ALL
        SELECT s.root_id, a.taxon_id, t.taxon_group_id, count(*)
        FROM standing_incidents s
        JOIN cases k ON k.incident_id = s.incident_id AND k.origin <> 'ofMother'
        JOIN animals a ON a.id = k.animal_id
        JOIN taxa t ON t.id = a.taxon_id
        GROUP BY 1, 2, 3) told
    GROUP BY 1, 2, 3
)
SELECT k.root_id AS incident_id, k.taxon_id, k.taxon_group_id, k.n::integer AS individual_count
FROM kinds k
WHERE k.taxon_id IS NOT NULL
   OR k.taxon_group_id IS NOT NULL AND NOT EXISTS (
        SELECT 1 FROM kinds o
        WHERE o.root_id = k.root_id AND o.taxon_group_id = k.taxon_group_id AND o.taxon_id IS NOT NULL)
   OR k.taxon_group_id IS NULL AND NOT EXISTS (
        SELECT 1 FROM kinds o WHERE o.root_id = k.root_id AND o.taxon_group_id IS NOT NULL);
