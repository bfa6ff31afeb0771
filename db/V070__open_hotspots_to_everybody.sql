-- Whether everybody, signed in or not, may have the hotspots of the latest annual run as a layer: no, until a network says so.
ALTER TABLE disclosure_settings ADD COLUMN public_hotspots boolean NOT NULL DEFAULT false;
