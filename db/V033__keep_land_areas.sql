-- Land and water of which something is known that bears on where an animal may go. Polygons on WGS 84, longitude first, as
-- well-known binary; PostgreSQL looks for them by their boxes, the server looks into them.
CREATE TABLE land_areas (
    id              uuid PRIMARY KEY,
    version         integer          NOT NULL DEFAULT 0,
    kind            text             NOT NULL CHECK (kind IN ('catchment', 'water', 'nestingGround', 'protectedArea',
                                                              'property', 'excluded', 'burnt', 'flooded')),
    name            text             NOT NULL,
    -- who says so, or whose map it is
    source          text             NOT NULL,
    from_day        date             NOT NULL,
    -- the first day on which it no longer holds; empty: nobody knows
    until_day       date,
    shape           bytea            NOT NULL CHECK (octet_length(shape) > 0),
    west            double precision NOT NULL,
    south           double precision NOT NULL,
    east            double precision NOT NULL,
    north           double precision NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz      NOT NULL,
    recorded_by     uuid             NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT land_ends_after_it_began CHECK (until_day > from_day),
    CONSTRAINT the_box_of_land_is_on_the_earth CHECK (west BETWEEN -180 AND 180 AND east BETWEEN -180 AND 180
        AND south BETWEEN -90 AND 90 AND north BETWEEN -90 AND 90 AND west < east AND south < north)
);
CREATE INDEX land_areas_by_box ON land_areas (west, east, south, north);

SELECT keep_revisions('land_areas');

-- Where animals of the water lay their eggs is told to few; of other land everybody who sees any is told the same.
CREATE VIEW land_area_strictness AS
SELECT id, CASE kind WHEN 'nestingGround' THEN strictness(0) ELSE strictness(NULL) END AS strictness FROM land_areas;
