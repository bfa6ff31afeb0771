-- What clinics take and when they are open; what vets order; how a death was confirmed; what a hold holds.

CREATE TABLE clinic_profiles (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    organisation_id uuid        NOT NULL CONSTRAINT a_clinic_has_one_profile UNIQUE REFERENCES organisations,
    -- of the practice, never a person's own
    phone           text        NOT NULL,
    -- what to do when it is closed, in the clinic's own words
    when_closed     text,
    words           text,
    -- keys of the groups that it says it treats
    treats          jsonb       NOT NULL,
    -- spans of a weekday in the region's time zone: day, opens, closes
    opening         jsonb       NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);

ALTER TABLE visits
    -- by eye and hand, from 1 (emaciated) to 5 (fat): common practice, no source
    ADD COLUMN body_condition integer CONSTRAINT body_condition_is_one_of_five CHECK (body_condition BETWEEN 1 AND 5);
-- Who may hold it from then on, in the vet's words.
ALTER TABLE discharges ADD COLUMN may_hold text;

-- What a vet orders, in the vet's own words: nothing here is proposed by the server.
CREATE TABLE drug_orders (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    visit_id          uuid        NOT NULL REFERENCES visits,
    drug              text        NOT NULL,
    dose              text        NOT NULL,
    route             text        NOT NULL,
    times             text        NOT NULL,
    from_day          date        NOT NULL,
    until_day         date,
    controlled        boolean     NOT NULL,
    vet_name          text        NOT NULL,
    vet_registration  text        NOT NULL,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- when it was ordered
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_drug_order_and_whether_it_is_controlled UNIQUE (id, controlled),
    CONSTRAINT a_drug_order_ends_after_it_began CHECK (until_day >= from_day),
    CONSTRAINT withdrawing_a_drug_order_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX drug_orders_by_visit ON drug_orders (visit_id);

CREATE TABLE drug_uses (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    order_id          uuid        NOT NULL,
    controlled        boolean     NOT NULL,
    amount            text        NOT NULL,
    given_by          text        NOT NULL,
    batch             text,
    expires_on        date,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- when it was given
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    FOREIGN KEY (order_id, controlled) REFERENCES drug_orders (id, controlled),
    CONSTRAINT a_controlled_drug_has_batch_and_expiry CHECK (NOT controlled OR num_nonnulls(batch, expires_on) = 2),
    CONSTRAINT withdrawing_a_drug_use_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX drug_uses_by_order ON drug_uses (order_id);

SELECT keep_revisions('clinic_profiles'), keep_revisions('drug_orders'), keep_revisions('drug_uses');

-- By whose authority an animal was put down, and who confirmed that it is dead, and when.
ALTER TABLE fates
    ADD COLUMN authority          text,
    ADD COLUMN death_confirmed_by text,
    ADD COLUMN death_confirmed_at timestamptz,
    ADD CONSTRAINT confirming_a_death_has_name_and_time
        CHECK (num_nonnulls(death_confirmed_by, death_confirmed_at) IN (0, 2)),
    ADD CONSTRAINT a_death_is_confirmed_once_it_happened CHECK (death_confirmed_at >= happened_at),
    -- Rows from before did not say it, and stay as they are
    ADD CONSTRAINT euthanasia_has_authority_and_confirmed_death
        CHECK (fate <> 'euthanased' OR num_nonnulls(authority, death_confirmed_by) = 2) NOT VALID;

-- A body that is held stays until it is cleared, whatever it is held for.
CREATE FUNCTION keep_what_is_held() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NEW.disposal IS NOT NULL AND NEW.withdrawn_at IS NULL AND EXISTS (
        SELECT 1 FROM holds WHERE case_id = NEW.case_id AND happened_at <= NEW.disposed_at
            AND (cleared_at IS NULL OR cleared_at > NEW.disposed_at)) THEN
        RAISE EXCEPTION 'a body that is held is not disposed of' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'a_held_body_is_kept';
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER keep_what_is_held BEFORE INSERT OR UPDATE ON bodies FOR EACH ROW EXECUTE FUNCTION keep_what_is_held();

-- An animal under suspicion of a disease that must be notified goes to nobody but the authority.
CREATE FUNCTION stop_hand_overs_under_suspicion() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (
        SELECT 1 FROM holds WHERE case_id = NEW.case_id AND kind = 'notifiableDisease' AND happened_at <= NEW.happened_at
            AND (cleared_at IS NULL OR cleared_at > NEW.happened_at))
        AND NOT EXISTS (
            SELECT 1 FROM organisations WHERE id = NEW.taker_organisation_id AND kind = 'wildlifeAuthority') THEN
        RAISE EXCEPTION 'an animal under suspicion is not handed over' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'no_hand_over_under_suspicion';
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER stop_hand_overs_under_suspicion BEFORE INSERT ON hand_overs FOR EACH ROW
    EXECUTE FUNCTION stop_hand_overs_under_suspicion();

CREATE VIEW drug_order_holders AS
SELECT o.id, h.organisation_id FROM drug_orders o JOIN visit_holders h ON h.id = o.visit_id;
SELECT belongs_by('clinic_profiles', 'organisation_id'), belongs_by('drug_orders', 'visit_id'),
       belongs_by('drug_uses', 'order_id'), held_by('drug_orders', 'visit_id', 'visit_holders'),
       held_by('drug_uses', 'order_id', 'drug_order_holders');
