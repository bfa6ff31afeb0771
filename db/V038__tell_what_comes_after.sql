-- What is known of animals after their release. Who is not seen again is not known to be dead.
ALTER TABLE releases ADD CONSTRAINT a_release_and_its_time UNIQUE (id, happened_at);
ALTER TABLE released_animals ADD CONSTRAINT an_animal_is_once_in_a_release UNIQUE (release_id, case_id);
-- In this order, so that a case is looked for by its key as before.
ALTER TABLE cases ADD CONSTRAINT a_case_and_its_animal UNIQUE (animal_id, id);

CREATE TABLE release_sightings (
    id                               uuid PRIMARY KEY,
    version                          integer     NOT NULL DEFAULT 0,
    release_id                       uuid        NOT NULL REFERENCES releases,
    released_at                      timestamptz NOT NULL,
    -- which of the animals it was; empty: one of them, nobody knows which
    case_id                          uuid,
    animal_id                        uuid,
    known_by                         text        NOT NULL CHECK (known_by IN ('photographOrNaturalMarks', 'foundByPerson',
                                                                              'tracked', 'guessed')),
    alive                            text        NOT NULL CHECK (alive IN ('yes', 'no', 'unknown')),
    decimal_latitude                 double precision CHECK (decimal_latitude BETWEEN -90 AND 90),
    decimal_longitude                double precision CHECK (decimal_longitude BETWEEN -180 AND 180),
    coordinate_uncertainty_in_meters double precision CHECK (coordinate_uncertainty_in_meters > 0),
    words                            text,
    -- the case of its coming in again
    new_case_id                      uuid,
    -- the collision that killed it
    incident_id                      uuid REFERENCES incidents,
    withdrawn_at                     timestamptz,
    withdrawn_because                text,
    happened_at                      timestamptz NOT NULL,
    recorded_at                      timestamptz NOT NULL,
    recorded_by                      uuid        NOT NULL REFERENCES accounts,
    revised_at                       timestamptz,
    revised_by                       uuid REFERENCES accounts,
    revision_reason                  text,
    import_id                        uuid REFERENCES imports,
    CONSTRAINT a_sighting_is_of_a_release_at_its_time
        FOREIGN KEY (release_id, released_at) REFERENCES releases (id, happened_at),
    CONSTRAINT a_sighting_comes_after_the_release CHECK (happened_at >= released_at),
    CONSTRAINT a_sighting_is_of_an_animal_of_the_release
        FOREIGN KEY (release_id, case_id) REFERENCES released_animals (release_id, case_id),
    CONSTRAINT a_sighting_knows_the_animal_of_its_case FOREIGN KEY (case_id, animal_id) REFERENCES cases (id, animal_id),
    CONSTRAINT a_sighting_names_case_and_animal_or_neither CHECK (num_nonnulls(case_id, animal_id) IN (0, 2)),
    CONSTRAINT who_comes_in_again_is_the_same_animal FOREIGN KEY (new_case_id, animal_id) REFERENCES cases (id, animal_id),
    CONSTRAINT who_comes_in_again_has_another_case
        CHECK (new_case_id IS NULL OR (case_id IS NOT NULL AND case_id <> new_case_id)),
    CONSTRAINT a_sighting_has_its_whole_place_or_none
        CHECK (num_nonnulls(decimal_latitude, decimal_longitude, coordinate_uncertainty_in_meters) IN (0, 3)),
    CONSTRAINT an_incident_is_named_of_a_death CHECK (incident_id IS NULL OR alive = 'no'),
    CONSTRAINT withdrawing_a_sighting_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX release_sightings_by_release ON release_sightings (release_id);
SELECT keep_revisions('release_sightings'),
       belongs_by('release_sightings', 'release_id', 'case_id'),
       held_by('release_sightings', 'release_id', 'release_holders');
