-- Addresses at which a member's tasks are read by a calendar: whoever has the address reads them, and nothing else. The secret in
-- it is kept as its SHA-256 alone.
CREATE TABLE care_calendars (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    member_id       uuid        NOT NULL REFERENCES members,
    secret          bytea       NOT NULL CONSTRAINT a_calendar_has_an_address_of_its_own UNIQUE
                                         CONSTRAINT a_calendar_keeps_a_digest CHECK (octet_length(secret) = 32),
    revoked_at      timestamptz,
    -- when it was made
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_calendar_is_revoked_after_it_was_made CHECK (revoked_at >= happened_at)
);
CREATE UNIQUE INDEX a_member_has_one_calendar ON care_calendars (member_id) WHERE revoked_at IS NULL;

SELECT keep_revisions('care_calendars'), belongs_by('care_calendars', 'member_id', 'secret');
