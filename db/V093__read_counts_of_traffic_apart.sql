-- Files of traffic counts are brought and read as those of roads, land and sites are.
ALTER TABLE brought_files DROP CONSTRAINT brought_files_kind_check;
ALTER TABLE brought_files ADD CONSTRAINT brought_files_kind_check
    CHECK (kind IN ('roadNetworks', 'landAreas', 'releaseSites', 'trafficCounts'));
