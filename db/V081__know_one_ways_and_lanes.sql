-- Whether a piece of road is travelled along its course only, and how many lanes it has; null where the source does not say.
ALTER TABLE road_links ADD COLUMN one_way boolean, ADD COLUMN lanes integer CHECK (lanes > 0);
