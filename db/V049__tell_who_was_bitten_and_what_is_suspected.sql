-- Who was bitten, scratched, licked, pricked or envenomed; and what disease is suspected of an animal.

-- Health data of people: read by very few, and by whom they concern.
CREATE TABLE personal.exposures (
    id                    uuid PRIMARY KEY,
    version               integer     NOT NULL DEFAULT 0,
    member_id             uuid REFERENCES members,
    person_id             uuid REFERENCES personal.people,
    -- to be reached in place of a child
    guardian_person_id    uuid REFERENCES personal.people,
    case_id               uuid REFERENCES cases,
    incident_id           uuid REFERENCES incidents,
    kind                  text CHECK (kind IN ('bite', 'scratch', 'lick', 'needle', 'venom', 'other')),
    body_part             text,
    washed                text CHECK (washed IN ('yes', 'no', 'unknown')),
    washed_minutes        integer CHECK (washed_minutes BETWEEN 0 AND 1440),
    protective_kit        text,
    -- whether the needle had been in the animal
    needle_used_on_animal text CHECK (needle_used_on_animal IN ('yes', 'no', 'unknown')),
    words                 text,
    told_at               timestamptz,
    told_unit             text,
    told_by               text,
    told_reference        text,
    closed_at             timestamptz,
    closed_by             text,
    outcome               text,
    withdrawn_at          timestamptz,
    withdrawn_because     text,
    erased_at             timestamptz,
    happened_at           timestamptz NOT NULL,
    recorded_at           timestamptz NOT NULL,
    recorded_by           uuid        NOT NULL REFERENCES accounts,
    revised_at            timestamptz,
    revised_by            uuid REFERENCES accounts,
    revision_reason       text,
    import_id             uuid REFERENCES imports,
    CONSTRAINT an_exposure_is_of_one_person CHECK (num_nonnulls(member_id, person_id) = 1),
    CONSTRAINT a_guardian_is_of_somebody_outside CHECK (guardian_person_id IS NULL OR person_id IS NOT NULL),
    CONSTRAINT an_exposure_is_whole_or_erased CHECK (CASE WHEN erased_at IS NULL THEN num_nonnulls(kind, washed) = 2
        ELSE num_nonnulls(kind, body_part, washed, washed_minutes, protective_kit, needle_used_on_animal, words, told_at,
                          told_unit, told_by, told_reference, closed_at, closed_by, outcome, withdrawn_at,
                          withdrawn_because) = 0 END),
    CONSTRAINT only_washing_takes_minutes CHECK (washed_minutes IS NULL OR washed = 'yes'),
    CONSTRAINT only_a_needle_was_in_an_animal CHECK (needle_used_on_animal IS NULL OR kind = 'needle'),
    CONSTRAINT telling_the_health_unit_has_time_unit_and_name CHECK (num_nonnulls(told_at, told_unit, told_by) IN (0, 3)
        AND (told_reference IS NULL OR told_at IS NOT NULL)),
    CONSTRAINT the_health_unit_is_told_afterwards CHECK (told_at >= happened_at),
    CONSTRAINT closing_an_exposure_has_time_name_and_outcome CHECK (num_nonnulls(closed_at, closed_by, outcome) IN (0, 3)),
    CONSTRAINT an_exposure_is_closed_once_told CHECK (closed_at IS NULL OR closed_at >= coalesce(told_at, happened_at)
        AND (told_at IS NOT NULL OR kind = 'venom')),
    CONSTRAINT withdrawing_an_exposure_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX exposures_by_member ON personal.exposures (member_id) WHERE member_id IS NOT NULL;
CREATE INDEX exposures_by_person ON personal.exposures (person_id) WHERE person_id IS NOT NULL;
CREATE INDEX exposures_by_guardian ON personal.exposures (guardian_person_id) WHERE guardian_person_id IS NOT NULL;
CREATE INDEX exposures_by_case ON personal.exposures (case_id) WHERE case_id IS NOT NULL;
CREATE INDEX exposures_not_told ON personal.exposures (id)
    WHERE told_at IS NULL AND kind <> 'venom' AND closed_at IS NULL AND withdrawn_at IS NULL;
SELECT keep_revisions('personal.exposures'),
       belongs_by('exposures', 'member_id', 'person_id', 'guardian_person_id');

-- The animal may be named later; once it is, another one is another exposure.
CREATE FUNCTION personal.keep_what_was_named() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF OLD.case_id IS NOT NULL AND NEW.case_id IS DISTINCT FROM OLD.case_id
            OR OLD.incident_id IS NOT NULL AND NEW.incident_id IS DISTINCT FROM OLD.incident_id THEN
        RAISE EXCEPTION 'the animal of an exposure stays' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'the_animal_of_an_exposure_stays';
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER keep_what_was_named BEFORE UPDATE ON personal.exposures FOR EACH ROW
    EXECUTE FUNCTION personal.keep_what_was_named();

-- Whoever was exposed outside of the roster is kept as long as a caller or finder of that incident; so is a guardian.
CREATE OR REPLACE VIEW personal.dealings AS
    SELECT caller_id AS person_id, happened_at, incident_id, NULL::uuid AS case_id FROM calls WHERE caller_id IS NOT NULL
    UNION ALL
    SELECT holder_person_id, CASE WHEN upper_inf(held) THEN lower(held) ELSE upper(held) END, NULL, case_id
    FROM custody_links WHERE holder_person_id IS NOT NULL
    UNION ALL
    SELECT taker_person_id, happened_at, NULL, case_id FROM hand_overs WHERE taker_person_id IS NOT NULL
    UNION ALL
    SELECT holder_person_id, greatest(happened_at, disposed_at), NULL, case_id
    FROM bodies WHERE holder_person_id IS NOT NULL AND withdrawn_at IS NULL
    UNION ALL
    SELECT person_id, greatest(happened_at, told_at, closed_at), incident_id, case_id
    FROM personal.exposures WHERE person_id IS NOT NULL
    UNION ALL
    SELECT guardian_person_id, greatest(happened_at, told_at, closed_at), incident_id, case_id
    FROM personal.exposures WHERE guardian_person_id IS NOT NULL;

CREATE FUNCTION personal.exposure_is_open(person uuid, membership uuid) RETURNS boolean LANGUAGE sql STABLE
SET search_path = pg_catalog, public AS $$
    SELECT EXISTS (SELECT 1 FROM personal.exposures
                   WHERE (person_id = person OR guardian_person_id = person OR member_id = membership)
                     AND num_nonnulls(closed_at, withdrawn_at, erased_at) = 0)
$$;

CREATE FUNCTION personal.erase_exposures(person uuid, membership uuid, at timestamptz) RETURNS void LANGUAGE plpgsql
SET search_path = pg_catalog, public AS $$
DECLARE
    theirs uuid[];
BEGIN
    SELECT coalesce(array_agg(id), '{}') INTO theirs FROM personal.exposures WHERE person_id = person OR member_id = membership;
    UPDATE personal.exposures SET kind = NULL, body_part = NULL, washed = NULL, washed_minutes = NULL, protective_kit = NULL,
        needle_used_on_animal = NULL, words = NULL, told_at = NULL, told_unit = NULL, told_by = NULL, told_reference = NULL,
        closed_at = NULL, closed_by = NULL, outcome = NULL, withdrawn_at = NULL, withdrawn_because = NULL, erased_at = at,
        version = version + 1, revised_at = at, revised_by = '01920000-0000-7000-8000-000000000000',
        revision_reason = 'personal data erased'
    WHERE id = ANY (theirs) AND erased_at IS NULL;
    DELETE FROM personal.revisions WHERE table_name = 'exposures' AND row_id = ANY (theirs);
    UPDATE personal.idempotency_keys k SET body = ''
    WHERE EXISTS (SELECT 1 FROM personal.exposures x
                  WHERE (x.id = ANY (theirs) OR x.guardian_person_id = person)
                    AND position(convert_to(x.id::text, 'UTF8') IN k.body) > 0);
END $$;
REVOKE ALL ON FUNCTION personal.erase_exposures(uuid, uuid, timestamptz) FROM PUBLIC;

-- What is asked and done for each person now knows of exposures; whatever else it says stays.
DO $$
DECLARE
    change record;
    told text;
BEGIN
    FOR change IN
        SELECT * FROM (VALUES
            ('personal.retention_of(uuid, date)',
             'OR EXISTS (SELECT 1 FROM bodies b WHERE b.holder_person_id = p.id',
             'OR personal.exposure_is_open(p.id, NULL)'
             ' OR EXISTS (SELECT 1 FROM bodies b WHERE b.holder_person_id = p.id'),
            ('personal.retention_of(uuid, date)',
             'greatest(m.left_on::timestamp AT TIME ZONE ''UTC'',',
             'greatest(m.left_on::timestamp AT TIME ZONE ''UTC'','
             ' (SELECT max(greatest(x.happened_at, x.told_at, x.closed_at)) FROM personal.exposures x WHERE x.member_id = m.id),'),
            ('personal.retention_of(uuid, date)',
             'm.left_on IS NULL OR m.left_on > day',
             'm.left_on IS NULL OR m.left_on > day OR personal.exposure_is_open(NULL, m.id)'),
            ('personal.erase_now(uuid, timestamptz, uuid)',
             'PERFORM personal.sweep(patterns, at);',
             'PERFORM personal.erase_exposures(person, membership, at); PERFORM personal.sweep(patterns, at);'))
            AS changes (of_function, was, is_now)
    LOOP
        told := pg_get_functiondef(change.of_function::regprocedure);
        IF position(change.was IN told) = 0 THEN
            RAISE EXCEPTION '% has another form', change.of_function;
        END IF;
        EXECUTE replace(told, change.was, change.is_now);
    END LOOP;
END $$;

-- Diseases that an authority wants to hear of at the first suspicion. Whom to ring is the network's own to enter.
CREATE TABLE notifiable_conditions (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    -- ISO 3166; empty: wherever the network works
    jurisdiction      text,
    name              text        NOT NULL,
    -- keys of the groups that it is about; none: any animal
    taxon_groups      jsonb       NOT NULL DEFAULT '[]',
    signs             text        NOT NULL,
    source            text        NOT NULL,
    read_on           date        NOT NULL,
    review_by         date        NOT NULL,
    hotline_name      text,
    hotline_number    text,
    hotline_source    text,
    hotline_read_on   date,
    hotline_review_by date,
    happened_at       timestamptz,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_condition_is_named_once UNIQUE NULLS NOT DISTINCT (jurisdiction, name),
    CONSTRAINT a_condition_names_its_jurisdiction CHECK (jurisdiction ~ '^[A-Z]{2}(-[A-Z0-9]{1,3})?$'),
    CONSTRAINT a_condition_is_read_again_later CHECK (review_by > read_on),
    CONSTRAINT a_hotline_is_whole
        CHECK (num_nonnulls(hotline_name, hotline_number, hotline_source, hotline_read_on, hotline_review_by) IN (0, 5)),
    CONSTRAINT a_hotline_is_read_again_later CHECK (hotline_review_by > hotline_read_on)
);

ALTER TABLE holds ADD CONSTRAINT a_hold_and_its_case UNIQUE (id, case_id);

CREATE TABLE disease_suspicions (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    case_id         uuid        NOT NULL REFERENCES cases,
    condition_id    uuid        NOT NULL REFERENCES notifiable_conditions,
    hold_id         uuid        NOT NULL,
    -- what was seen, in words
    signs           text        NOT NULL,
    suspected_by    text        NOT NULL,
    told_at         timestamptz,
    told_to         text,
    told_by         text,
    told_reference  text,
    -- when it was seen
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_suspicion_has_a_hold_of_its_case FOREIGN KEY (hold_id, case_id) REFERENCES holds (id, case_id),
    CONSTRAINT telling_of_a_suspicion_has_time_whom_and_name CHECK (num_nonnulls(told_at, told_to, told_by) IN (0, 3)
        AND (told_reference IS NULL OR told_at IS NOT NULL)),
    CONSTRAINT a_suspicion_is_told_afterwards CHECK (told_at >= happened_at)
);
CREATE INDEX disease_suspicions_by_case ON disease_suspicions (case_id);
CREATE VIEW disease_suspicion_holders AS
SELECT s.id, h.organisation_id FROM disease_suspicions s JOIN case_holders h ON h.id = s.case_id;
SELECT keep_revisions('notifiable_conditions'), keep_revisions('disease_suspicions'),
       belongs_by('disease_suspicions', 'case_id', 'hold_id'),
       held_by('disease_suspicions', 'case_id', 'case_holders');

-- A hand-over that was offered before the suspicion is not accepted under it either.
CREATE FUNCTION stop_acceptance_under_suspicion() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (
        SELECT 1 FROM holds WHERE case_id = NEW.case_id AND kind = 'notifiableDisease' AND happened_at <= NEW.accepted_at
            AND (cleared_at IS NULL OR cleared_at > NEW.accepted_at))
        AND NOT EXISTS (
            SELECT 1 FROM organisations WHERE id = NEW.taker_organisation_id AND kind = 'wildlifeAuthority') THEN
        RAISE EXCEPTION 'an animal under suspicion is not handed over' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'no_hand_over_under_suspicion';
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER stop_acceptance_under_suspicion BEFORE UPDATE ON hand_overs FOR EACH ROW
    WHEN (OLD.accepted_at IS NULL AND NEW.accepted_at IS NOT NULL) EXECUTE FUNCTION stop_acceptance_under_suspicion();

-- Which diseases these are, and nothing more: no list of signs was read, and no number.
INSERT INTO notifiable_conditions (id, name, signs, source, read_on, review_by, recorded_at, recorded_by) VALUES
    ('01920000-0000-7000-8000-000000049001', 'lyssavirus in a bat',
     'Signs of lyssavirus in a bat, as the authority of your state describes them: they are not listed here, and how a bat looks or behaves does not show that it has none.',
     'Common practice: one suspicion is rung through at once. That looks and behaviour are no guide: Tasmanian Department of Health, Rabies and Australian Bat Lyssavirus (health.tas.gov.au/node/19546).',
     '2026-11-29', '2027-11-29', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000049002', 'avian influenza',
     'Signs of avian influenza in a bird, as the authority of your state describes them: they are not listed here.',
     'Common practice, no source: one suspicion is rung through at once.',
     '2026-11-29', '2027-11-29', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000049003', 'another emergency animal disease',
     'What the authority of your state counts as an emergency animal disease: the list is theirs, and is not kept here.',
     'Common practice, no source: one suspicion is rung through at once.',
     '2026-11-29', '2027-11-29', now(), '01920000-0000-7000-8000-000000000000');
