-- Traffic that was counted or estimated at a place of a road, or along a stretch of it, in a period of a year at most.
CREATE TABLE traffic_counts (
    id                             uuid PRIMARY KEY,
    version                        integer          NOT NULL DEFAULT 0,
    -- what whoever counts calls the place, so that years of one place, and directions, belong together
    station                        text,
    road                           text             NOT NULL,
    carriageway                    text,
    -- of a point both are the same
    from_chainage_metres           double precision NOT NULL,
    to_chainage_metres             double precision NOT NULL,
    network_number                 integer          NOT NULL,
    -- on the road; of a stretch in its middle
    decimal_latitude               double precision NOT NULL CHECK (decimal_latitude BETWEEN -90 AND 90),
    decimal_longitude              double precision NOT NULL CHECK (decimal_longitude BETWEEN -180 AND 180),
    -- how far the place that was given lies from the road
    offset_metres                  double precision NOT NULL CHECK (offset_metres >= 0),
    verbatim_place                 text             NOT NULL,
    coordinate_uncertainty_metres  double precision NOT NULL CHECK (coordinate_uncertainty_metres > 0),
    from_day                       date             NOT NULL,
    -- the last day, included
    to_day                         date             NOT NULL,
    vehicles_per_day               double precision NOT NULL CHECK (vehicles_per_day BETWEEN 0 AND 1000000),
    measure                        text             NOT NULL CHECK (measure IN ('annualAverage', 'averageOfDaysCounted')),
    standard_error                 double precision CHECK (standard_error BETWEEN 0 AND 1000000),
    days_counted                   integer CHECK (days_counted BETWEEN 1 AND 366),
    directions                     text             NOT NULL CHECK (directions IN ('both', 'one')),
    direction                      text,
    -- from 0 to 1
    heavy_vehicle_share            double precision CHECK (heavy_vehicle_share BETWEEN 0 AND 1),
    kind                           text             NOT NULL CHECK (kind IN ('continuous', 'shortTerm', 'estimated')),
    source                         text             NOT NULL,
    words                          text,
    withdrawn_at                   timestamptz,
    withdrawn_because              text,
    -- the beginning of the first day
    happened_at                    timestamptz      NOT NULL,
    recorded_at                    timestamptz      NOT NULL,
    recorded_by                    uuid             NOT NULL REFERENCES accounts,
    revised_at                     timestamptz,
    revised_by                     uuid REFERENCES accounts,
    revision_reason                text,
    import_id                      uuid REFERENCES imports,
    CONSTRAINT traffic_is_of_a_year_at_most CHECK (to_day >= from_day AND to_day - from_day < 366),
    CONSTRAINT traffic_is_from_a_chainage_to_another CHECK (from_chainage_metres <= to_chainage_metres),
    CONSTRAINT a_direction_is_of_traffic_in_one CHECK (direction IS NULL OR directions = 'one'),
    CONSTRAINT days_counted_are_of_the_period CHECK (days_counted <= to_day - from_day + 1),
    CONSTRAINT an_estimate_counts_no_days CHECK (kind <> 'estimated' OR days_counted IS NULL),
    CONSTRAINT withdrawing_a_traffic_count_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX traffic_counts_by_road ON traffic_counts (lower(road));
CREATE INDEX traffic_counts_by_day ON traffic_counts (to_day);

SELECT keep_revisions('traffic_counts');
