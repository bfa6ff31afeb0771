-- How eggs came, what became of them, and how they are kept until they hatch.

ALTER TABLE egg_recoveries
    ADD COLUMN how text NOT NULL DEFAULT 'unknown'
        CHECK (how IN ('surgery', 'afterDeath', 'induced', 'laidInCare', 'laidInTransit', 'unknown')),
    ADD COLUMN withdrawn_at      timestamptz,
    ADD COLUMN withdrawn_because text,
    ADD CONSTRAINT withdrawing_a_recovery_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2));

-- Eggs that somebody gave up, and why. Nothing else makes an egg a failed one.
CREATE TABLE failed_eggs (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    clutch_id         uuid        NOT NULL REFERENCES clutches,
    failed            integer     NOT NULL CHECK (failed > 0),
    grounds           text        NOT NULL CHECK (grounds IN ('collapsed', 'mouldy', 'noDevelopmentOnCandling', 'openedDead',
                                                              'broken', 'other')),
    said_by           text        NOT NULL,
    words             text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT other_grounds_of_failing_have_words CHECK (grounds <> 'other' OR words IS NOT NULL),
    CONSTRAINT withdrawing_failed_eggs_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX failed_eggs_by_clutch ON failed_eggs (clutch_id);

-- A reading of how many eggs are still in the mother.
CREATE TABLE eggs_left_inside (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    clutch_id         uuid        NOT NULL REFERENCES clutches,
    counted           integer     NOT NULL CHECK (counted >= 0),
    reader            text        NOT NULL,
    words             text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT withdrawing_a_reading_of_the_inside_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX eggs_left_inside_by_clutch ON eggs_left_inside (clutch_id);

-- In what the eggs lie; the newest one holds.
CREATE TABLE clutch_set_ups (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    clutch_id         uuid        NOT NULL REFERENCES clutches,
    medium            text        NOT NULL,
    -- by weight, as given: so many parts of water to so many of the dry medium
    water_parts       double precision CHECK (water_parts > 0 AND water_parts <= 1000),
    medium_parts      double precision CHECK (medium_parts > 0 AND medium_parts <= 1000),
    box               text        NOT NULL,
    top_marked        text        NOT NULL CHECK (top_marked IN ('yes', 'no', 'unknown')),
    set_up_by         text        NOT NULL,
    words             text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_ratio_by_weight_has_both_parts CHECK (num_nonnulls(water_parts, medium_parts) IN (0, 2)),
    CONSTRAINT withdrawing_a_set_up_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX clutch_set_ups_by_clutch ON clutch_set_ups (clutch_id);

CREATE TABLE candlings (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    clutch_id         uuid        NOT NULL REFERENCES clutches,
    developing        integer     NOT NULL CHECK (developing >= 0),
    not_developing    integer     NOT NULL CHECK (not_developing >= 0),
    cannot_tell       integer     NOT NULL CHECK (cannot_tell >= 0),
    candled_by        text        NOT NULL,
    words             text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_candling_is_of_some_eggs CHECK (developing + not_developing + cannot_tell > 0),
    CONSTRAINT withdrawing_a_candling_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX candlings_by_clutch ON candlings (clutch_id);

-- One reading by hand, or a file of a logger.
CREATE TABLE clutch_temperature_records (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    clutch_id         uuid        NOT NULL REFERENCES clutches,
    source            text        NOT NULL,
    kind              text        NOT NULL CHECK (kind IN ('byHand', 'loggerFile')),
    readings          integer     NOT NULL CHECK (readings > 0),
    last_at           timestamptz NOT NULL,
    lowest_celsius    double precision NOT NULL,
    highest_celsius   double precision NOT NULL,
    sha256            text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- the first reading
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_temperature_record_and_its_source UNIQUE (id, clutch_id, source),
    CONSTRAINT a_temperature_record_ends_after_it_begins CHECK (last_at >= happened_at),
    CONSTRAINT a_temperature_record_has_its_range CHECK (lowest_celsius <= highest_celsius),
    CONSTRAINT withdrawing_temperatures_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX clutch_temperature_records_by_clutch ON clutch_temperature_records (clutch_id);

-- Temperatures of the substrate. They never change; with their record they stop standing, all of them.
CREATE TABLE clutch_temperatures (
    number    bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    record_id uuid             NOT NULL,
    clutch_id uuid             NOT NULL,
    source    text             NOT NULL,
    read_at   timestamptz      NOT NULL,
    celsius   double precision NOT NULL CHECK (celsius BETWEEN -20 AND 60),
    stands    boolean          NOT NULL DEFAULT true,
    FOREIGN KEY (record_id, clutch_id, source) REFERENCES clutch_temperature_records (id, clutch_id, source)
);
CREATE UNIQUE INDEX one_temperature_of_a_source_at_a_time ON clutch_temperatures (clutch_id, source, read_at) WHERE stands;
CREATE INDEX clutch_temperatures_by_record ON clutch_temperatures (record_id);
CREATE INDEX clutch_temperatures_in_time ON clutch_temperatures (clutch_id, read_at, number);
CREATE TRIGGER temperatures_stay BEFORE UPDATE ON clutch_temperatures FOR EACH ROW
    WHEN (NOT OLD.stands OR NEW.stands OR (NEW.number, NEW.record_id, NEW.clutch_id, NEW.source, NEW.read_at, NEW.celsius)
          IS DISTINCT FROM (OLD.number, OLD.record_id, OLD.clutch_id, OLD.source, OLD.read_at, OLD.celsius))
    EXECUTE FUNCTION refuse_change();

CREATE FUNCTION withdraw_temperatures() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    UPDATE clutch_temperatures SET stands = false WHERE record_id = NEW.id AND stands;
    RETURN NEW;
END $$;
CREATE TRIGGER withdraw_temperatures AFTER UPDATE ON clutch_temperature_records FOR EACH ROW
    WHEN (OLD.withdrawn_at IS NULL AND NEW.withdrawn_at IS NOT NULL) EXECUTE FUNCTION withdraw_temperatures();

-- Hatched and failed are never more than were set, in whatever order and by whomever they are entered, corrected or withdrawn.
DROP TRIGGER count_hatchlings ON hatchings;
DROP FUNCTION count_hatchlings();
CREATE FUNCTION count_eggs() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    eggs integer;
    done integer;
    broken_rule text;
BEGIN
    PERFORM 1 FROM clutches WHERE id = NEW.clutch_id FOR UPDATE;
    SELECT coalesce(sum(set_to_incubate), 0) INTO eggs FROM egg_recoveries
    WHERE clutch_id = NEW.clutch_id AND withdrawn_at IS NULL AND id <> NEW.id;
    SELECT coalesce(sum(n), 0) INTO done FROM (
        SELECT hatched AS n FROM hatchings WHERE clutch_id = NEW.clutch_id AND id <> NEW.id
        UNION ALL
        SELECT failed FROM failed_eggs WHERE clutch_id = NEW.clutch_id AND withdrawn_at IS NULL AND id <> NEW.id) counted;
    IF TG_TABLE_NAME = 'hatchings' THEN
        done := done + NEW.hatched;
        broken_rule := 'no_more_hatch_than_were_set';
    ELSIF NEW.withdrawn_at IS NOT NULL THEN
        broken_rule := 'as_many_stay_set_as_hatched_or_failed';
    ELSIF TG_TABLE_NAME = 'failed_eggs' THEN
        done := done + NEW.failed;
        broken_rule := 'no_more_fail_than_were_set';
    ELSE
        eggs := eggs + NEW.set_to_incubate;
        broken_rule := 'as_many_stay_set_as_hatched_or_failed';
    END IF;
    IF done > eggs THEN
        RAISE EXCEPTION 'more eggs hatched or failed than were set' USING ERRCODE = 'check_violation',
            CONSTRAINT = broken_rule;
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER count_eggs BEFORE INSERT OR UPDATE ON hatchings FOR EACH ROW EXECUTE FUNCTION count_eggs();
CREATE TRIGGER count_eggs BEFORE INSERT OR UPDATE ON failed_eggs FOR EACH ROW EXECUTE FUNCTION count_eggs();
CREATE TRIGGER count_eggs BEFORE INSERT OR UPDATE ON egg_recoveries FOR EACH ROW EXECUTE FUNCTION count_eggs();

SELECT keep_revisions('failed_eggs'), keep_revisions('eggs_left_inside'), keep_revisions('clutch_set_ups'),
       keep_revisions('candlings'), keep_revisions('clutch_temperature_records');
SELECT belongs_by('failed_eggs', 'clutch_id'), belongs_by('eggs_left_inside', 'clutch_id'),
       belongs_by('clutch_set_ups', 'clutch_id'), belongs_by('candlings', 'clutch_id'),
       belongs_by('clutch_temperature_records', 'clutch_id');
SELECT held_by('failed_eggs', 'clutch_id', 'clutch_holders'), held_by('eggs_left_inside', 'clutch_id', 'clutch_holders'),
       held_by('clutch_set_ups', 'clutch_id', 'clutch_holders'), held_by('candlings', 'clutch_id', 'clutch_holders'),
       held_by('clutch_temperature_records', 'clutch_id', 'clutch_holders');
