-- The floor: the region, accounts, revisions, personal data apart, imports, retries.
--
-- Conventions of every table that holds records of the network:
--   id, version                                    identity, and the lock of its revision
--   happened_at, recorded_at, recorded_by          two clocks: when it happened, when and by whom it was entered
--   revised_at, revised_by, revision_reason        the current revision, empty while the first one stands
--   import_id                                      the file it came from, empty when typed
-- keep_revisions(table) makes every UPDATE leave the row as it was in `revisions`. The application's role may neither
-- delete nor touch `revisions` but by adding to it.

CREATE EXTENSION IF NOT EXISTS btree_gist;
CREATE EXTENSION IF NOT EXISTS pg_trgm;
CREATE SCHEMA personal;

GRANT USAGE ON SCHEMA public, personal TO "${applicationRole}";
ALTER DEFAULT PRIVILEGES IN SCHEMA public GRANT SELECT, INSERT, UPDATE ON TABLES TO "${applicationRole}";
ALTER DEFAULT PRIVILEGES IN SCHEMA personal GRANT SELECT, INSERT, UPDATE ON TABLES TO "${applicationRole}";
ALTER DEFAULT PRIVILEGES IN SCHEMA public GRANT USAGE ON SEQUENCES TO "${applicationRole}";

CREATE TABLE accounts (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    username        text        NOT NULL CONSTRAINT accounts_username_is_taken UNIQUE,
    password_hash   text        NOT NULL,
    roles           text        NOT NULL,
    member_id       uuid,
    organisation_id uuid,
    created_at      timestamptz NOT NULL,
    disabled_at     timestamptz
);

-- The server's own account, in whose name shipped rows are written. Its hash is of a random secret that nobody has.
INSERT INTO accounts (id, username, password_hash, roles, created_at)
VALUES ('01920000-0000-7000-8000-000000000000', 'culvert',
        '$2a$12$qLNKdMaRyYO5HmJzJYQE4.HQ0va4RFOpXCEr7dYojELP9Zc/zIaOu', '', now());

CREATE TABLE regions (
    id           uuid PRIMARY KEY,
    version      integer     NOT NULL DEFAULT 0,
    singleton    boolean     NOT NULL DEFAULT true CONSTRAINT regions_only_one UNIQUE CHECK (singleton),
    name         text        NOT NULL,
    time_zone    text        NOT NULL,
    country_code text        NOT NULL,
    south        double precision NOT NULL,
    west         double precision NOT NULL,
    north        double precision NOT NULL,
    east         double precision NOT NULL,
    demo         boolean     NOT NULL DEFAULT false,
    recorded_at  timestamptz NOT NULL,
    CONSTRAINT regions_box_is_sane CHECK (south BETWEEN -90 AND 90 AND north BETWEEN -90 AND 90 AND south < north
        AND west BETWEEN -180 AND 180 AND east BETWEEN -180 AND 180)
);

CREATE TABLE imports (
    id          uuid PRIMARY KEY,
    kind        text        NOT NULL,
    file_name   text        NOT NULL,
    sha256      text        NOT NULL,
    recorded_at timestamptz NOT NULL,
    recorded_by uuid        NOT NULL REFERENCES accounts
);

CREATE TABLE revisions (
    table_name  text        NOT NULL,
    row_id      uuid        NOT NULL,
    row_version integer     NOT NULL,
    row_before  jsonb       NOT NULL,
    replaced_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (table_name, row_id, row_version)
);

-- Revisions of personal data live apart as well, so that they can be erased with it.
CREATE TABLE personal.revisions (LIKE public.revisions INCLUDING ALL);

CREATE FUNCTION keep_revision() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_TABLE_SCHEMA = 'personal' THEN
        INSERT INTO personal.revisions (table_name, row_id, row_version, row_before)
        VALUES (TG_TABLE_NAME, OLD.id, OLD.version, to_jsonb(OLD));
    ELSE
        INSERT INTO public.revisions (table_name, row_id, row_version, row_before)
        VALUES (TG_TABLE_NAME, OLD.id, OLD.version, to_jsonb(OLD));
    END IF;
    RETURN NEW;
END $$;

CREATE FUNCTION keep_revisions(of_table regclass) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
    EXECUTE format('CREATE TRIGGER keep_revision BEFORE UPDATE ON %s FOR EACH ROW EXECUTE FUNCTION keep_revision()',
                   of_table);
END $$;

-- Retention is data: the longest duty that applies decides when personal data are erased.
CREATE TABLE retention_rules (
    id            uuid PRIMARY KEY,
    version       integer     NOT NULL DEFAULT 0,
    jurisdiction  text        NOT NULL,
    kind          text        NOT NULL,
    years         integer     NOT NULL CHECK (years > 0),
    source        text        NOT NULL,
    read_on       date        NOT NULL,
    valid_from    date        NOT NULL,
    valid_to      date,
    recorded_at   timestamptz NOT NULL,
    recorded_by   uuid        NOT NULL REFERENCES accounts
);

-- People who ring, find, carry or care. Everything that names a person outside the roster is here and only here.
CREATE TABLE personal.people (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    name            text,
    phone           text,
    email           text,
    address         text,
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

-- What was said, word for word: people say names and numbers, so words are personal until shown otherwise.
CREATE TABLE personal.words (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    said            text,
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

CREATE TABLE idempotency_keys (
    account_id   uuid        NOT NULL REFERENCES accounts,
    key          text        NOT NULL,
    request_hash text        NOT NULL,
    status       integer,
    response     text,
    recorded_at  timestamptz NOT NULL,
    PRIMARY KEY (account_id, key)
);

SELECT keep_revisions('accounts'), keep_revisions('regions'), keep_revisions('retention_rules'),
       keep_revisions('personal.people'), keep_revisions('personal.words');
