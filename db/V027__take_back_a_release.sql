-- An animal that was not let go after all: its part of the release is taken back, and stays to be read.
ALTER TABLE released_animals
    ADD COLUMN withdrawn_at timestamptz,
    DROP CONSTRAINT a_case_is_released_once;
CREATE UNIQUE INDEX a_case_is_released_once ON released_animals (case_id) WHERE withdrawn_at IS NULL;
