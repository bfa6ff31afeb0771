-- Aftercare: templates that are inert until a vet adopts them, the plan of a case, and what was done of it.

CREATE TABLE plan_templates (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    key             text        NOT NULL CONSTRAINT a_plan_template_has_its_own_key UNIQUE,
    name            text        NOT NULL,
    -- key of the group it is for; empty: for all
    taxon_group     text,
    words           text,
    source          text        NOT NULL,
    steps           jsonb       NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_plan_template_has_steps
        CHECK (CASE WHEN jsonb_typeof(steps) = 'array' THEN jsonb_array_length(steps) > 0 ELSE false END)
);

-- A vet takes a template for good as it stands; as it is changed afterwards it wants adopting again.
CREATE TABLE plan_template_adoptions (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    template_id       uuid        NOT NULL REFERENCES plan_templates,
    template_revision integer     NOT NULL,
    vet_name          text        NOT NULL,
    vet_registration  text        NOT NULL,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- when it was adopted
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT withdrawing_an_adoption_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX plan_template_adoptions_by_template ON plan_template_adoptions (template_id);

CREATE FUNCTION require_template_as_it_stands() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NOT EXISTS (SELECT 1 FROM plan_templates t
                   WHERE t.id = NEW.template_id AND t.version + 1 = NEW.template_revision FOR SHARE) THEN
        RAISE EXCEPTION 'another revision of the template' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'an_adoption_is_of_the_template_as_it_stands', TABLE = TG_TABLE_NAME;
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER an_adoption_is_of_the_template_as_it_stands BEFORE INSERT ON plan_template_adoptions
    FOR EACH ROW EXECUTE FUNCTION require_template_as_it_stands();

CREATE TABLE aftercare_plans (
    id                     uuid PRIMARY KEY,
    version                integer     NOT NULL DEFAULT 0,
    case_id                uuid        NOT NULL REFERENCES cases,
    visit_id               uuid REFERENCES visits,
    adoption_id            uuid REFERENCES plan_template_adoptions,
    vet_name               text        NOT NULL,
    vet_registration       text        NOT NULL,
    day_zero               date        NOT NULL,
    words                  text,
    ended_at               timestamptz,
    ended_because          text,
    ended_vet_name         text,
    ended_vet_registration text,
    -- when it was made
    happened_at            timestamptz NOT NULL,
    recorded_at            timestamptz NOT NULL,
    recorded_by            uuid        NOT NULL REFERENCES accounts,
    revised_at             timestamptz,
    revised_by             uuid REFERENCES accounts,
    revision_reason        text,
    import_id              uuid REFERENCES imports,
    CONSTRAINT an_aftercare_plan_and_its_case UNIQUE (id, case_id),
    CONSTRAINT ending_an_aftercare_plan_has_time_reason_and_vet
        CHECK (num_nonnulls(ended_at, ended_because, ended_vet_name, ended_vet_registration) IN (0, 4)),
    CONSTRAINT an_aftercare_plan_ends_after_it_was_made CHECK (ended_at >= happened_at)
);
CREATE UNIQUE INDEX one_aftercare_plan_is_in_force_for_a_case ON aftercare_plans (case_id) WHERE ended_at IS NULL;
CREATE INDEX aftercare_plans_by_case ON aftercare_plans (case_id);

-- The steps that hold from a day on: the first with the plan, the others with a reason.
CREATE TABLE aftercare_plan_phases (
    id               uuid PRIMARY KEY,
    version          integer     NOT NULL DEFAULT 0,
    plan_id          uuid        NOT NULL REFERENCES aftercare_plans,
    place            integer     NOT NULL CHECK (place >= 0),
    from_day         integer     NOT NULL CHECK (from_day >= 0),
    steps            jsonb       NOT NULL CHECK (jsonb_typeof(steps) = 'array'),
    vet_name         text        NOT NULL,
    vet_registration text        NOT NULL,
    reason           text,
    -- when it was decided
    happened_at      timestamptz NOT NULL,
    recorded_at      timestamptz NOT NULL,
    recorded_by      uuid        NOT NULL REFERENCES accounts,
    revised_at       timestamptz,
    revised_by       uuid REFERENCES accounts,
    revision_reason  text,
    import_id        uuid REFERENCES imports,
    CONSTRAINT changes_of_a_plan_have_an_order UNIQUE (plan_id, place),
    CONSTRAINT a_change_of_a_plan_has_its_reason CHECK ((place = 0) = (reason IS NULL)),
    CONSTRAINT a_plan_begins_with_day_0 CHECK (place > 0 OR from_day = 0)
);

-- What was done, skipped or seen. One of a task says which: the step's key, and the day it is called by.
CREATE TABLE care_entries (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    case_id           uuid        NOT NULL REFERENCES cases,
    kind              text        NOT NULL CHECK (kind IN ('task', 'weight', 'food', 'wound', 'photograph', 'note')),
    plan_id           uuid,
    step_key          text,
    day               integer CHECK (day >= 0),
    figure            double precision,
    measure           text CHECK (measure IN ('minutes', 'grams', 'degreesCelsius', 'millimetres')),
    answer            boolean,
    words             text,
    skipped_because   text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT an_entry_of_a_task_is_of_the_cases_plan
        FOREIGN KEY (plan_id, case_id) REFERENCES aftercare_plans (id, case_id),
    CONSTRAINT an_entry_of_a_task_names_it CHECK (num_nonnulls(plan_id, step_key, day) = CASE kind WHEN 'task' THEN 3 ELSE 0 END),
    CONSTRAINT a_figure_has_its_measure CHECK ((figure IS NULL) = (measure IS NULL)),
    CONSTRAINT only_a_task_is_skipped CHECK (skipped_because IS NULL OR kind = 'task'),
    CONSTRAINT what_is_skipped_has_no_value CHECK (skipped_because IS NULL OR num_nonnulls(figure, answer) = 0),
    CONSTRAINT a_weight_is_told_in_grams CHECK (kind <> 'weight' OR coalesce(figure > 0 AND measure = 'grams', false)),
    CONSTRAINT what_is_no_weight_is_told_in_words
        CHECK (kind IN ('task', 'weight') OR (words IS NOT NULL AND num_nonnulls(figure, answer) = 0)),
    CONSTRAINT withdrawing_a_care_entry_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE UNIQUE INDEX a_task_has_one_entry ON care_entries (plan_id, step_key, day) WHERE withdrawn_at IS NULL;
CREATE INDEX care_entries_by_case ON care_entries (case_id, happened_at);

CREATE VIEW aftercare_plan_holders AS
SELECT p.id, h.organisation_id FROM aftercare_plans p JOIN case_holders h ON h.id = p.case_id;
CREATE VIEW care_entry_holders AS
SELECT e.id, h.organisation_id FROM care_entries e JOIN case_holders h ON h.id = e.case_id;

SELECT keep_revisions('plan_templates'), keep_revisions('plan_template_adoptions'), keep_revisions('aftercare_plans'),
       keep_revisions('aftercare_plan_phases'), keep_revisions('care_entries');
SELECT belongs_by('plan_templates', 'key'), belongs_by('plan_template_adoptions', 'template_id', 'template_revision'),
       belongs_by('aftercare_plans', 'case_id', 'visit_id', 'adoption_id'),
       belongs_by('aftercare_plan_phases', 'plan_id', 'place'),
       belongs_by('care_entries', 'case_id', 'plan_id', 'step_key', 'day');
SELECT held_by('aftercare_plans', 'case_id', 'case_holders'),
       held_by('aftercare_plan_phases', 'plan_id', 'aftercare_plan_holders'),
       held_by('care_entries', 'case_id', 'case_holders');

-- Examples. Nobody has adopted them, and no plan comes of them before a vet does.
INSERT INTO plan_templates (id, key, name, taxon_group, words, source, steps, recorded_at, recorded_by) VALUES
    ('01920000-0000-7000-8000-000000004401', 'turtle-soft-tissue', 'Soft-tissue surgery in a freshwater turtle', 'turtles',
     'An example: about two days dry, then a short swim a day for two weeks, then water as normal; stitches out at about six weeks.',
     'Common practice, no source; but that stitches come out late, at 4 to 6 weeks: Common Surgical Procedures, Turtle Ally module, North Carolina State University.',
     '[{"key": "dry", "words": "Out of the water, dry and quiet.", "firstDay": 0, "lastDay": 1, "rhythm": "daily", "measure": "none"},
       {"key": "swim", "words": "One swim of 15 to 20 minutes, watched all the time, then dry again.", "firstDay": 2, "lastDay": 15, "rhythm": "daily", "measure": "minutes", "low": 15, "high": 20},
       {"key": "wound", "words": "Look at the wound: is it closed, dry and clean?", "firstDay": 0, "lastDay": 41, "rhythm": "daily", "measure": "yesNo", "flagAnswer": false},
       {"key": "weigh", "words": "Weigh it, the shell dry.", "firstDay": 0, "lastDay": 42, "rhythm": "weekly", "measure": "grams", "fallPercentPerWeek": 5, "fallOverDays": 28},
       {"key": "water", "words": "Water as normal from now on.", "firstDay": 16, "lastDay": 16, "rhythm": "once", "measure": "none"},
       {"key": "stitches", "words": "At the clinic: stitches out.", "firstDay": 40, "lastDay": 46, "rhythm": "once", "measure": "none"}]',
     now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000004402', 'turtle-shell-hardware', 'Shell repair with hardware in a freshwater turtle', 'turtles',
     'An example: the fracture stays dry; hardware begins to come off at about 42 days and is off at about 56.',
     'Days of the hardware: 51 turtles with 86 fractures of the shell, Wisconsin 2014 to 2019, J. Am. Vet. Med. Assoc. 260(7), 2022: removal begins at a median of 42 days (35 to 49) and ends at a median of 56 days (26 to 77). The rest: common practice, no source.',
     '[{"key": "dry", "words": "Out of the water but for soaks that the vet allows; the fracture stays dry.", "firstDay": 0, "lastDay": 41, "rhythm": "daily", "measure": "none"},
       {"key": "hardware", "words": "Look at each piece of hardware: is it firm, the skin and shell around it dry and clean?", "firstDay": 0, "lastDay": 55, "rhythm": "daily", "measure": "yesNo", "flagAnswer": false},
       {"key": "weigh", "words": "Weigh it.", "firstDay": 0, "lastDay": 56, "rhythm": "weekly", "measure": "grams", "fallPercentPerWeek": 5, "fallOverDays": 28},
       {"key": "hardware-begins", "words": "At the clinic: may the first hardware come off?", "firstDay": 35, "lastDay": 49, "rhythm": "once", "measure": "none"},
       {"key": "hardware-ends", "words": "At the clinic: may the last hardware come off?", "firstDay": 50, "lastDay": 77, "rhythm": "once", "measure": "none"}]',
     now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000004403', 'wing-membrane', 'Re-checks of a wound of a wing membrane', 'flying-foxes',
     'An example. Only people who are vaccinated handle bats.',
     'Common practice, no source.',
     '[{"key": "membrane", "words": "Look at the membrane without spreading the wing more than the vet showed: is it dry, without smell, and no larger than yesterday?", "firstDay": 0, "lastDay": 20, "rhythm": "daily", "measure": "yesNo", "flagAnswer": false},
       {"key": "hole", "words": "Measure the hole across its widest.", "firstDay": 0, "lastDay": 20, "rhythm": "everyDays", "everyDays": 3, "measure": "millimetres"},
       {"key": "weigh", "words": "Weigh it in its wrap, and take off the weight of the wrap.", "firstDay": 0, "lastDay": 20, "rhythm": "everyDays", "everyDays": 2, "measure": "grams", "fallPercentPerWeek": 5, "fallOverDays": 10},
       {"key": "re-check", "words": "At the clinic: the wing is looked at.", "firstDay": 7, "lastDay": 21, "rhythm": "weekly", "measure": "none"}]',
     now(), '01920000-0000-7000-8000-000000000000');
