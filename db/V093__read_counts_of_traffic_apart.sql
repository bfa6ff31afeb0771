-- Files of traffic counts are brought and read as those of roads, land and sites are.
ALTER TABLE brought_files DROP CONSTRAINT brought_files_kind_check;
ALTER TABLE brought_files ADD CONSTRAINT brought_files_kind_check
    CHECK (kind IN ('roadNetworks', 'landAreas', 'releaseSites', 'trafficCounts'));

-- A file that is called off before anybody began to read it has come to its end without a beginning.
ALTER TABLE brought_file_progress DROP CONSTRAINT brought_file_progress_times_begun_check;
ALTER TABLE brought_file_progress ALTER COLUMN begun_at DROP NOT NULL;
ALTER TABLE brought_file_progress ADD CONSTRAINT a_file_that_was_begun_says_when
    CHECK (times_begun >= 0 AND (times_begun = 0) = (begun_at IS NULL));
