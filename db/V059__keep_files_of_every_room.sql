-- Files that were handed in are no longer of releases alone. Each is kept with the digest of its content (SHA-256, FIPS
-- 180-4), which the database computes anew whenever a row is written.
ALTER TABLE release_files RENAME TO kept_files;
ALTER INDEX release_files_pkey RENAME TO kept_files_pkey;
DO $$
DECLARE
    told record;
BEGIN
    FOR told IN SELECT conname FROM pg_constraint WHERE conrelid = 'kept_files'::regclass AND conname LIKE 'release\_files\_%'
    LOOP
        EXECUTE format('ALTER TABLE kept_files RENAME CONSTRAINT %I TO %I', told.conname,
                       replace(told.conname, 'release_files_', 'kept_files_'));
    END LOOP;
END $$;

-- Rows that are there get theirs as the column is made. Afterwards it is a column like others, that a row is entered with:
-- one that was always computed would follow whatever became of the content.
ALTER TABLE kept_files ADD COLUMN sha256 bytea NOT NULL GENERATED ALWAYS AS (sha256(content)) STORED;
ALTER TABLE kept_files ALTER COLUMN sha256 DROP EXPRESSION;
ALTER TABLE kept_files
    ADD CONSTRAINT a_file_has_the_digest_of_its_content CHECK (sha256 = sha256(content)),
    ADD CONSTRAINT a_file_and_its_digest UNIQUE (id, sha256);
