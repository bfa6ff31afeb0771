-- A link is called the same from version to version as long as its course does not change; what is recorded on an older
-- version can then follow it.
ALTER TABLE road_networks ADD COLUMN kept_links integer NOT NULL DEFAULT 0 CHECK (kept_links >= 0);

ALTER TABLE road_links ADD COLUMN lasting_id uuid;
ALTER TABLE road_links DISABLE TRIGGER kept_for_ever;
UPDATE road_links SET lasting_id = id;
ALTER TABLE road_links ENABLE TRIGGER kept_for_ever;
ALTER TABLE road_links ALTER COLUMN lasting_id SET NOT NULL;
ALTER TABLE road_links ADD CONSTRAINT road_links_last_once_in_a_network UNIQUE (road_network_id, lasting_id);
