-- From when on a coordinator hears of tasks that were missed: the rule of the animal's group, or else the one for all.
CREATE TABLE missed_task_rules (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    -- empty: for all groups that have no rule of their own
    taxon_group_id  uuid REFERENCES taxon_groups,
    hours_overdue   integer CHECK (hours_overdue >= 0),
    misses_in_a_row integer CHECK (misses_in_a_row >= 1),
    words           text,
    valid_from      date        NOT NULL,
    -- the first day on which it no longer holds
    valid_to        date,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_missed_task_rule_has_a_figure CHECK (num_nonnulls(hours_overdue, misses_in_a_row) >= 1),
    CONSTRAINT a_missed_task_rule_holds_for_some_time CHECK (valid_to > valid_from),
    CONSTRAINT one_missed_task_rule_holds_for_a_group EXCLUDE USING gist (
        (coalesce(taxon_group_id, '00000000-0000-0000-0000-000000000000')) WITH =,
        daterange(valid_from, valid_to, '[)') WITH &&)
);
SELECT keep_revisions('missed_task_rules'), belongs_by('missed_task_rules', 'taxon_group_id');

INSERT INTO missed_task_rules (id, hours_overdue, misses_in_a_row, words, valid_from, recorded_at, recorded_by) VALUES
    ('01920000-0000-7000-8000-000000004501', 24, 2,
     'A day overdue, or missed twice in a row. Common practice, no source: set your own.', '2020-01-01', now(),
     '01920000-0000-7000-8000-000000000000');
