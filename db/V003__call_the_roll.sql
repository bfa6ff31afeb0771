-- Who belongs to the network, what they may hold, where they are.

CREATE TABLE organisations (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    kind            text        NOT NULL CHECK (kind IN ('network', 'clinic', 'shelter', 'council', 'roadsAuthority',
                                                         'police', 'wildlifeAuthority')),
    name            text        NOT NULL CONSTRAINT organisations_name_is_taken UNIQUE,
    latitude        double precision CHECK (latitude BETWEEN -90 AND 90),
    longitude       double precision CHECK (longitude BETWEEN -180 AND 180),
    x_ray           boolean     NOT NULL DEFAULT false,
    surgery         boolean     NOT NULL DEFAULT false,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);

-- A member's home is where a dispatcher measures from; it never leaves the network.
CREATE TABLE personal.members (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    name            text        NOT NULL,
    phone           text,
    email           text,
    home_latitude   double precision CHECK (home_latitude BETWEEN -90 AND 90),
    home_longitude  double precision CHECK (home_longitude BETWEEN -180 AND 180),
    keep_until      date,
    erased_at       timestamptz,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);

CREATE TABLE members (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    person_id       uuid        NOT NULL UNIQUE REFERENCES personal.members,
    organisation_id uuid        NOT NULL REFERENCES organisations,
    call_sign       text        NOT NULL CONSTRAINT members_call_sign_is_taken UNIQUE,
    attends         boolean     NOT NULL DEFAULT false,
    cares           boolean     NOT NULL DEFAULT false,
    vet_registration text,
    left_on         date,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);

-- An authorisation belongs to a holder and is bound to dates: what is not listed on a day is not authorised on it.
CREATE TABLE authorisations (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    member_id       uuid REFERENCES members,
    organisation_id uuid REFERENCES organisations,
    jurisdiction    text        NOT NULL,
    class           text        NOT NULL,
    number          text        NOT NULL,
    taxon_group_id  uuid        NOT NULL REFERENCES taxon_groups,
    valid_from      date        NOT NULL,
    valid_to        date        NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT authorisations_have_one_holder CHECK (num_nonnulls(member_id, organisation_id) = 1),
    CONSTRAINT authorisations_end_after_they_begin CHECK (valid_to >= valid_from)
);
CREATE INDEX authorisations_by_member ON authorisations (member_id);
CREATE INDEX authorisations_by_organisation ON authorisations (organisation_id);

-- Health data: readable by very few; others learn only "current on that day" or "not shown to be".
CREATE TABLE personal.vaccinations (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    member_id       uuid        NOT NULL REFERENCES members,
    against         text        NOT NULL,
    given_on        date        NOT NULL,
    current_until   date        NOT NULL,
    basis           text        NOT NULL,
    keep_until      date,
    erased_at       timestamptz,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT vaccinations_end_after_they_begin CHECK (current_until >= given_on)
);
CREATE INDEX vaccinations_by_member ON personal.vaccinations (member_id);

ALTER TABLE accounts
    ADD CONSTRAINT accounts_member_exists FOREIGN KEY (member_id) REFERENCES members,
    ADD CONSTRAINT accounts_organisation_exists FOREIGN KEY (organisation_id) REFERENCES organisations;

SELECT keep_revisions('organisations'), keep_revisions('personal.members'), keep_revisions('members'),
       keep_revisions('authorisations'), keep_revisions('personal.vaccinations');
