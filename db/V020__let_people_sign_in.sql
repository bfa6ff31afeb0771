-- How people and programs sign in. Of every secret the database holds a digest alone: bcrypt of passwords, SHA-256 of
-- what is random and long already (session cookies, tokens, links).

-- Hashes have no revisions: what was replaced is of no use but to a thief.
CREATE TABLE passwords (
    account_id uuid PRIMARY KEY REFERENCES accounts,
    hash       text        NOT NULL,
    set_at     timestamptz NOT NULL
);
INSERT INTO passwords (account_id, hash, set_at)
SELECT id, password_hash, created_at FROM accounts WHERE username <> 'culvert';
ALTER TABLE accounts DROP COLUMN password_hash;
UPDATE revisions SET row_before = row_before - 'password_hash' WHERE table_name = 'accounts';

CREATE TABLE sessions (
    id           uuid PRIMARY KEY,
    secret       bytea       NOT NULL UNIQUE,
    account_id   uuid        NOT NULL REFERENCES accounts,
    form_secret  text        NOT NULL,
    created_at   timestamptz NOT NULL,
    last_seen_at timestamptz NOT NULL,
    expires_at   timestamptz NOT NULL,
    ended_at     timestamptz
);
CREATE INDEX sessions_by_account ON sessions (account_id) WHERE ended_at IS NULL;

CREATE TABLE api_tokens (
    id           uuid PRIMARY KEY,
    secret       bytea       NOT NULL CONSTRAINT api_tokens_secret_is_known UNIQUE,
    account_id   uuid        NOT NULL REFERENCES accounts,
    name         text        NOT NULL,
    -- such as 'incidents:read incidents:write', or '*:read'
    scopes       text        NOT NULL,
    created_at   timestamptz NOT NULL,
    expires_at   timestamptz,
    last_used_at timestamptz,
    revoked_at   timestamptz,
    revoked_by   uuid REFERENCES accounts,
    CONSTRAINT revoking_a_token_has_time_and_author CHECK (num_nonnulls(revoked_at, revoked_by) IN (0, 2))
);
CREATE INDEX api_tokens_by_account ON api_tokens (account_id);

CREATE TABLE one_time_links (
    id         uuid PRIMARY KEY,
    secret     bytea       NOT NULL UNIQUE,
    account_id uuid        NOT NULL REFERENCES accounts,
    purpose    text        NOT NULL CHECK (purpose IN ('invitation', 'reset')),
    created_at timestamptz NOT NULL,
    created_by uuid        NOT NULL REFERENCES accounts,
    expires_at timestamptz NOT NULL,
    used_at    timestamptz
);
CREATE INDEX one_time_links_by_account ON one_time_links (account_id) WHERE used_at IS NULL;

-- Tries of the last day, by digest of the name typed and of the address they came from: names typed may be anybody's.
CREATE TABLE personal.sign_in_tries (
    id        uuid PRIMARY KEY,
    username  bytea       NOT NULL,
    source    bytea       NOT NULL,
    tried_at  timestamptz NOT NULL,
    -- a try counts from its beginning, so that many at once are counted too
    outcome   text        NOT NULL CHECK (outcome IN ('begun', 'wrong', 'right', 'refused'))
);
CREATE INDEX sign_in_tries_by_username ON personal.sign_in_tries (username, tried_at);
CREATE INDEX sign_in_tries_by_source ON personal.sign_in_tries (source, tried_at);

-- The application may delete nothing; this is the one way that these go, and only old ones do.
CREATE FUNCTION personal.forget_sign_ins() RETURNS integer LANGUAGE sql SECURITY DEFINER
SET search_path = pg_catalog AS $$
    WITH tries AS (DELETE FROM personal.sign_in_tries WHERE tried_at < now() - interval '1 day' RETURNING 1),
         ended AS (DELETE FROM public.sessions
                   WHERE least(ended_at, expires_at) < now() - interval '30 days' RETURNING 1),
         used AS (DELETE FROM public.one_time_links
                  WHERE least(used_at, expires_at) < now() - interval '30 days' RETURNING 1)
    SELECT ((SELECT count(*) FROM tries) + (SELECT count(*) FROM ended) + (SELECT count(*) FROM used))::integer
$$;
REVOKE ALL ON FUNCTION personal.forget_sign_ins() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION personal.forget_sign_ins() TO "${applicationRole}";
