-- Personal data are hidden at once, erased when the longest duty to keep them has passed, and asked for by the person they
-- are about. What a person dealt with is derived, and so is when they are due; nothing of it is stored.

-- A rule of nought years says that somebody looked and found no duty: that is not the same as no rule.
ALTER TABLE retention_rules
    DROP CONSTRAINT retention_rules_years_check,
    ADD COLUMN happened_at timestamptz,
    ADD COLUMN revised_at timestamptz,
    ADD COLUMN revised_by uuid REFERENCES accounts,
    ADD COLUMN revision_reason text,
    ADD COLUMN import_id uuid REFERENCES imports,
    ADD CONSTRAINT a_duty_to_keep_is_of_years CHECK (years BETWEEN 0 AND 200),
    ADD CONSTRAINT a_duty_to_keep_is_of_people_or_members CHECK (kind IN ('people', 'members')),
    ADD CONSTRAINT a_duty_to_keep_names_its_jurisdiction
        CHECK (jurisdiction ~ '^([A-Z]{2}(-[A-Z0-9]{1,3})?|network)$'),
    ADD CONSTRAINT a_duty_to_keep_ends_after_it_begins CHECK (valid_to >= valid_from);

ALTER TABLE personal.people
    DROP COLUMN keep_until,
    ADD COLUMN hidden_at timestamptz,
    ADD CONSTRAINT an_erased_person_has_no_name CHECK (erased_at IS NULL OR num_nonnulls(name, phone, email, address) = 0);
ALTER TABLE personal.words
    DROP COLUMN keep_until,
    ADD CONSTRAINT erased_words_are_gone CHECK (erased_at IS NULL OR said IS NULL);
ALTER TABLE personal.members
    DROP COLUMN keep_until,
    ADD COLUMN hidden_at timestamptz,
    ALTER COLUMN name DROP NOT NULL,
    ADD CONSTRAINT a_member_has_a_name_until_erased CHECK (erased_at IS NOT NULL OR name IS NOT NULL),
    ADD CONSTRAINT an_erased_member_has_no_name
        CHECK (erased_at IS NULL OR num_nonnulls(name, phone, email, home_latitude, home_longitude) = 0);
ALTER TABLE personal.vaccinations
    DROP COLUMN keep_until,
    ALTER COLUMN against DROP NOT NULL,
    ALTER COLUMN given_on DROP NOT NULL,
    ALTER COLUMN current_until DROP NOT NULL,
    ALTER COLUMN basis DROP NOT NULL,
    ADD CONSTRAINT a_vaccination_is_whole_or_erased
        CHECK (num_nonnulls(against, given_on, current_until, basis) = CASE WHEN erased_at IS NULL THEN 4 ELSE 0 END);

CREATE INDEX calls_by_caller ON calls (caller_id);
CREATE INDEX calls_by_words ON calls (words_id);
CREATE INDEX custody_links_by_person ON custody_links (holder_person_id) WHERE holder_person_id IS NOT NULL;
CREATE INDEX hand_overs_by_person ON hand_overs (taker_person_id) WHERE taker_person_id IS NOT NULL;
CREATE INDEX bodies_by_person ON bodies (holder_person_id) WHERE holder_person_id IS NOT NULL;
CREATE INDEX people_not_erased ON personal.people (id) WHERE erased_at IS NULL;

-- Somebody asked to be erased; what they said of it is personal too.
CREATE TABLE personal.erasure_requests (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    person_id       uuid        NOT NULL CONSTRAINT erasure_is_asked_for_once UNIQUE,
    reason          text,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
SELECT keep_revisions('personal.erasure_requests');

-- What was erased, when, and by which duty's end: no word of what it said.
CREATE TABLE erasures (
    id           uuid PRIMARY KEY DEFAULT gen_random_uuid(),
    person_id    uuid        NOT NULL CONSTRAINT a_person_is_erased_once UNIQUE,
    kind         text        NOT NULL CHECK (kind IN ('people', 'members')),
    rule_id      uuid REFERENCES retention_rules,
    requested_at timestamptz,
    happened_at  timestamptz NOT NULL,
    recorded_at  timestamptz NOT NULL,
    recorded_by  uuid        NOT NULL REFERENCES accounts
);
CREATE INDEX erasures_by_time ON erasures (happened_at, id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON erasures FOR EACH ROW EXECUTE FUNCTION refuse_change();
REVOKE INSERT, UPDATE ON erasures FROM "${applicationRole}";

-- What is kept for ever is still swept of a name when it is erased: by the functions below, which work as the owner.
CREATE OR REPLACE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP = 'UPDATE' AND current_setting('culvert.erasing', true) = 'on'
            AND current_user = (SELECT pg_get_userbyid(relowner) FROM pg_class WHERE oid = TG_RELID) THEN
        RETURN NEW;
    END IF;
    RAISE EXCEPTION 'rows of % are kept as they are', TG_TABLE_NAME USING ERRCODE = 'integrity_constraint_violation';
END $$;

-- What a person outside of the roster had to do with.
CREATE VIEW personal.dealings AS
    SELECT caller_id AS person_id, happened_at, incident_id, NULL::uuid AS case_id FROM calls WHERE caller_id IS NOT NULL
    UNION ALL
    SELECT holder_person_id, CASE WHEN upper_inf(held) THEN lower(held) ELSE upper(held) END, NULL, case_id
    FROM custody_links WHERE holder_person_id IS NOT NULL
    UNION ALL
    SELECT taker_person_id, happened_at, NULL, case_id FROM hand_overs WHERE taker_person_id IS NOT NULL
    UNION ALL
    SELECT holder_person_id, greatest(happened_at, disposed_at), NULL, case_id
    FROM bodies WHERE holder_person_id IS NOT NULL AND withdrawn_at IS NULL;

-- Incidents of a person: those they rang about, those of animals that they held, and those joined with any of these.
CREATE FUNCTION personal.incidents_of(person uuid) RETURNS SETOF uuid LANGUAGE sql STABLE
SET search_path = pg_catalog, public AS $$
    WITH RECURSIVE linked (id) AS (
        SELECT coalesce(d.incident_id, c.incident_id) FROM personal.dealings d LEFT JOIN cases c ON c.id = d.case_id
        WHERE d.person_id = person
        UNION
        SELECT CASE WHEN j.kept_incident_id = l.id THEN j.joined_incident_id ELSE j.kept_incident_id END
        FROM linked l JOIN incident_joins j ON l.id IN (j.kept_incident_id, j.joined_incident_id)
        WHERE j.undone_at IS NULL)
    SELECT id FROM linked WHERE id IS NOT NULL
$$;

-- When the duty to keep a person ends, on what is known on a day: empty where a case of theirs, or their membership, goes on,
-- and where no rule says how long. The longest rule that holds that day decides.
CREATE FUNCTION personal.retention_of(person uuid, day date)
    RETURNS TABLE (kind text, last_dealing_at timestamptz, goes_on boolean, rule_id uuid, years integer, due_on date)
LANGUAGE sql STABLE SET search_path = pg_catalog, public AS $$
    WITH told AS (
        SELECT 'people' AS kind,
               coalesce(greatest(
                   (SELECT max(d.happened_at) FROM personal.dealings d WHERE d.person_id = p.id),
                   (SELECT max(f.happened_at) FROM fates f JOIN cases c ON c.id = f.case_id
                    WHERE c.incident_id IN (SELECT personal.incidents_of(p.id)) AND f.withdrawn_at IS NULL)),
                   p.happened_at, p.recorded_at) AS last_dealing_at,
               EXISTS (SELECT 1 FROM cases c WHERE c.incident_id IN (SELECT personal.incidents_of(p.id))
                         AND NOT EXISTS (SELECT 1 FROM fates f WHERE f.case_id = c.id AND f.withdrawn_at IS NULL))
               OR EXISTS (SELECT 1 FROM bodies b WHERE b.holder_person_id = p.id AND b.withdrawn_at IS NULL
                            AND b.disposed_at IS NULL) AS goes_on
        FROM personal.people p WHERE p.id = person
        UNION ALL
        SELECT 'members',
               greatest(m.left_on::timestamp AT TIME ZONE 'UTC',
                   (SELECT max(v.current_until)::timestamp AT TIME ZONE 'UTC' FROM personal.vaccinations v
                    WHERE v.member_id = m.id),
                   (SELECT max(CASE WHEN upper_inf(l.held) THEN lower(l.held) ELSE upper(l.held) END)
                    FROM custody_links l WHERE l.holder_member_id = m.id)),
               m.left_on IS NULL OR m.left_on > day
               OR EXISTS (SELECT 1 FROM custody_links l WHERE l.holder_member_id = m.id AND upper_inf(l.held)
                            AND NOT EXISTS (SELECT 1 FROM fates f WHERE f.case_id = l.case_id AND f.withdrawn_at IS NULL))
        FROM members m WHERE m.person_id = person)
    SELECT t.kind, t.last_dealing_at, t.goes_on, r.id, r.years,
           CASE WHEN NOT t.goes_on AND r.id IS NOT NULL
                THEN ((t.last_dealing_at AT TIME ZONE 'UTC')::date + make_interval(years => r.years))::date + 1 END
    FROM told t LEFT JOIN LATERAL (
        SELECT id, years FROM retention_rules
        WHERE kind = t.kind AND valid_from <= day AND (valid_to IS NULL OR valid_to >= day)
        ORDER BY years DESC, id LIMIT 1) r ON true
$$;

-- Takes what some patterns match out of everything that people type, and of what it was before.
CREATE FUNCTION personal.sweep(patterns text[], at timestamptz) RETURNS void LANGUAGE plpgsql
SET search_path = pg_catalog, public AS $$
DECLARE
    own_account CONSTANT uuid := '01920000-0000-7000-8000-000000000000';
    pattern CONSTANT text := array_to_string(patterns, '|');
    target record;
BEGIN
    IF coalesce(pattern, '') = '' THEN
        RETURN;
    END IF;
    FOR target IN
        SELECT format('%I.%I', n.nspname, c.relname) AS name,
               string_agg(format('%1$I = regexp_replace(%1$I::text, $1, ''[erased]'', ''gi'')%2$s', a.attname,
                   CASE a.atttypid WHEN 'jsonb'::regtype THEN '::jsonb' ELSE '' END), ', ') AS settings,
               string_agg(format('%I::text ~* $1', a.attname), ' OR ') AS conditions,
               (SELECT count(*) = 4 FROM pg_attribute x WHERE x.attrelid = c.oid
                    AND x.attname IN ('version', 'revised_at', 'revised_by', 'revision_reason')) AS revised
        FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
        JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
             AND a.atttypid IN ('text'::regtype, 'jsonb'::regtype) AND a.attname <> 'revision_reason'
        WHERE n.nspname IN ('public', 'personal') AND c.relkind = 'r'
          AND (EXISTS (SELECT 1 FROM pg_attribute x WHERE x.attrelid = c.oid AND x.attname = 'recorded_by')
               OR c.relname = 'revisions')
          -- Other people's names are their own. What is known of kinds of animal, roads, sites, rules and organisations is
          -- about no person; imports and runs are identified by digests of their content.
          AND (n.nspname, c.relname) NOT IN (('personal', 'people'), ('personal', 'members'))
          AND c.relname NOT IN ('taxon_groups', 'taxa', 'cautions', 'organisations', 'road_networks', 'road_links', 'causes',
              'gate_rules', 'release_rules', 'release_sites', 'season_windows', 'retention_rules', 'imports', 'hotspot_runs',
              'hotspot_run_results', 'disclosure_settings', 'idempotency_keys', 'erasures')
        GROUP BY n.nspname, c.relname, c.oid
        -- Revisions last, since sweeping a row makes one of it as it was.
        ORDER BY c.relname = 'revisions', n.nspname, c.relname
    LOOP
        IF target.revised THEN
            EXECUTE format('UPDATE %s SET %s, version = version + 1, revised_at = $2, revised_by = $3,'
                ' revision_reason = ''personal data erased'' WHERE %s OR revision_reason ~* $1',
                target.name, target.settings, target.conditions) USING pattern, at, own_account;
        ELSE
            EXECUTE format('UPDATE %s SET %s WHERE (%s)%s', target.name, target.settings, target.conditions,
                CASE target.name WHEN 'personal.revisions' THEN ' AND table_name NOT IN (''people'', ''members'')'
                                 ELSE '' END) USING pattern;
        END IF;
    END LOOP;
END $$;

-- Erases a person of either kind; says whether there was anything to erase. Nobody but the owner may ask for it as it is.
CREATE FUNCTION personal.erase_now(person uuid, at timestamptz, rule uuid) RETURNS boolean LANGUAGE plpgsql
SET search_path = pg_catalog, public AS $$
DECLARE
    own_account CONSTANT uuid := '01920000-0000-7000-8000-000000000000';
    because CONSTANT text := 'personal data erased';
    sort text;
    told text[];
    patterns text[];
    spoken uuid[];
    answers text[];
    membership uuid;
    former text;
BEGIN
    PERFORM set_config('culvert.erasing', 'on', true);
    IF EXISTS (SELECT 1 FROM personal.people WHERE id = person AND erased_at IS NULL) THEN
        sort := 'people';
        PERFORM 1 FROM personal.people WHERE id = person FOR UPDATE;
    ELSIF EXISTS (SELECT 1 FROM personal.members WHERE id = person AND erased_at IS NULL) THEN
        sort := 'members';
        PERFORM 1 FROM personal.members WHERE id = person FOR UPDATE;
        SELECT id INTO membership FROM members WHERE person_id = person;
    ELSE
        RETURN false;
    END IF;

    -- Whatever ever named them, unless somebody who is still kept has the same: a first name alone or a short number may be
    -- anybody's word. A number is known however it is grouped.
    SELECT array_agg(DISTINCT word), array_agg(DISTINCT CASE what
            WHEN 'phone' THEN regexp_replace(regexp_replace(word, '[^0-9]', '', 'g'), '([0-9])(?=[0-9])',
                '\1[ ()./-]{0,3}', 'g')
            ELSE regexp_replace(form, '([].^$*+?(){}|\\[])', '\\\1', 'g') END)
    INTO told, patterns
    FROM (
        SELECT to_jsonb(p) AS row FROM personal.people p WHERE p.id = person
        UNION ALL SELECT to_jsonb(m) FROM personal.members m WHERE m.id = person
        UNION ALL SELECT r.row_before FROM personal.revisions r
            WHERE r.row_id = person AND r.table_name IN ('people', 'members')) rows,
        LATERAL (VALUES ('name', trim(row ->> 'name')), ('phone', trim(row ->> 'phone')),
                        ('email', trim(row ->> 'email')), ('address', trim(row ->> 'address'))) words (what, word),
        -- as it stands in plain text, and as it stands within JSON
        LATERAL (VALUES (word), (trim(BOTH '"' FROM to_json(word)::text))) forms (form)
    WHERE CASE what
            WHEN 'name' THEN word LIKE '% %' AND length(word) >= 5
            WHEN 'phone' THEN length(regexp_replace(word, '[^0-9]', '', 'g')) >= 6
            WHEN 'email' THEN word LIKE '%_@_%'
            ELSE length(word) >= 8 END
      AND NOT EXISTS (SELECT 1 FROM personal.people o WHERE o.id <> person AND o.erased_at IS NULL
                        AND word IN (o.name, o.phone, o.email, o.address))
      AND NOT EXISTS (SELECT 1 FROM personal.members o WHERE o.id <> person AND o.erased_at IS NULL
                        AND word IN (o.name, o.phone, o.email));

    -- Their words, and what was noted at the scene of their incidents: people say names there, and nobody has shown that
    -- they did not.
    SELECT coalesce(array_agg(id), '{}') INTO spoken FROM (
        SELECT words_id AS id FROM calls WHERE caller_id = person AND words_id IS NOT NULL
        UNION
        SELECT scene_notes_id FROM attendances
        WHERE sort = 'people' AND incident_id IN (SELECT personal.incidents_of(person)) AND scene_notes_id IS NOT NULL) w;
    UPDATE personal.words SET said = NULL, erased_at = at, version = version + 1, revised_at = at,
        revised_by = own_account, revision_reason = because WHERE id = ANY (spoken) AND erased_at IS NULL;

    -- Answers that were kept for a retry showed it too; a retry is told that it was done, and no more.
    SELECT array_agg(id::text) INTO answers FROM (
        SELECT id FROM calls WHERE caller_id = person
        UNION SELECT personal.incidents_of(person) UNION SELECT person UNION SELECT membership WHERE membership IS NOT NULL) a;
    UPDATE personal.idempotency_keys k SET body = ''
    WHERE EXISTS (SELECT 1 FROM unnest(answers || told) word WHERE position(convert_to(word, 'UTF8') IN k.body) > 0);

    IF sort = 'people' THEN
        UPDATE personal.people SET name = NULL, phone = NULL, email = NULL, address = NULL, erased_at = at,
            version = version + 1, revised_at = at, revised_by = own_account, revision_reason = because WHERE id = person;
    ELSE
        former := 'former-' || right(person::text, 12);
        UPDATE personal.members SET name = NULL, phone = NULL, email = NULL, home_latitude = NULL, home_longitude = NULL,
            erased_at = at, version = version + 1, revised_at = at, revised_by = own_account, revision_reason = because
        WHERE id = person;
        UPDATE personal.vaccinations SET against = NULL, given_on = NULL, current_until = NULL, basis = NULL,
            erased_at = at, version = version + 1, revised_at = at, revised_by = own_account, revision_reason = because
        WHERE member_id = membership AND erased_at IS NULL;
        UPDATE members SET call_sign = former, vet_registration = NULL, version = version + 1, revised_at = at,
            revised_by = own_account, revision_reason = because WHERE id = membership;
        UPDATE public.revisions SET row_before = row_before || jsonb_build_object('call_sign', former, 'vet_registration', NULL)
        WHERE table_name = 'members' AND row_id = membership;
        UPDATE accounts SET username = 'former-' || right(id::text, 12), disabled_at = coalesce(disabled_at, at),
            version = version + 1 WHERE member_id = membership;
        UPDATE public.revisions r SET row_before = r.row_before || jsonb_build_object('username', a.username)
        FROM accounts a WHERE a.member_id = membership AND r.table_name = 'accounts' AND r.row_id = a.id;
        DELETE FROM passwords WHERE account_id IN (SELECT id FROM accounts WHERE member_id = membership);
        UPDATE api_tokens SET revoked_at = at, revoked_by = own_account, name = 'erased'
        WHERE account_id IN (SELECT id FROM accounts WHERE member_id = membership) AND revoked_at IS NULL;
        UPDATE sessions SET ended_at = at
        WHERE account_id IN (SELECT id FROM accounts WHERE member_id = membership) AND ended_at IS NULL;
        DELETE FROM personal.revisions WHERE table_name = 'vaccinations'
            AND row_id IN (SELECT id FROM personal.vaccinations WHERE member_id = membership);
    END IF;
    UPDATE personal.erasure_requests SET reason = NULL, version = version + 1, revised_at = at, revised_by = own_account,
        revision_reason = because WHERE person_id = person;
    DELETE FROM personal.revisions WHERE row_id = person OR row_id = ANY (spoken)
        OR row_id IN (SELECT id FROM personal.erasure_requests WHERE person_id = person);
    PERFORM personal.sweep(patterns, at);

    INSERT INTO erasures (person_id, kind, rule_id, requested_at, happened_at, recorded_at, recorded_by)
    VALUES (person, sort, (SELECT id FROM retention_rules WHERE id = rule),
            (SELECT happened_at FROM personal.erasure_requests WHERE person_id = person), at, at, own_account);
    RETURN true;
END $$;

-- The application erases who is due, and nobody else.
CREATE FUNCTION personal.erase(person uuid, at timestamptz) RETURNS boolean LANGUAGE plpgsql SECURITY DEFINER
SET search_path = pg_catalog, public AS $$
DECLARE
    told record;
BEGIN
    SELECT * INTO told FROM personal.retention_of(person, (at AT TIME ZONE 'UTC')::date);
    IF at > now() + interval '1 day' OR told.due_on IS NULL OR told.due_on > (at AT TIME ZONE 'UTC')::date THEN
        RAISE EXCEPTION 'there is still a duty to keep this person' USING ERRCODE = 'integrity_constraint_violation';
    END IF;
    RETURN personal.erase_now(person, at, told.rule_id);
END $$;

REVOKE ALL ON FUNCTION personal.sweep(text[], timestamptz), personal.erase_now(uuid, timestamptz, uuid),
    personal.erase(uuid, timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION personal.erase(uuid, timestamptz) TO "${applicationRole}";
