-- Which council, or which area of a roads authority, a road lies in: land whose kind bears on no release.
ALTER TABLE land_areas
    DROP CONSTRAINT land_areas_kind_check,
    ADD CONSTRAINT land_areas_kind_check CHECK (kind IN ('jurisdiction', 'catchment', 'water', 'nestingGround',
        'protectedArea', 'property', 'excluded', 'burnt', 'flooded', 'councilArea'));
