-- Which animals there are is data: groups that the job treats alike, taxa within them, cautions on either.

CREATE TABLE taxon_groups (
    id                    uuid PRIMARY KEY,
    version               integer     NOT NULL DEFAULT 0,
    key                   text        NOT NULL CONSTRAINT taxon_groups_key_is_taken UNIQUE
                                      CHECK (key ~ '^[a-z][a-z-]*$'),
    name                  text        NOT NULL,
    vaccination_needed    text,
    pouch                 boolean     NOT NULL DEFAULT false,
    clutches              boolean     NOT NULL DEFAULT false,
    introduced            boolean     NOT NULL DEFAULT false,
    happened_at           timestamptz,
    recorded_at           timestamptz NOT NULL,
    recorded_by           uuid        NOT NULL REFERENCES accounts,
    revised_at            timestamptz,
    revised_by            uuid REFERENCES accounts,
    revision_reason       text,
    import_id             uuid REFERENCES imports
);

CREATE TABLE taxa (
    id                    uuid PRIMARY KEY,
    version               integer     NOT NULL DEFAULT 0,
    scientific_name       text        NOT NULL CONSTRAINT taxa_scientific_name_is_taken UNIQUE,
    vernacular_name       text        NOT NULL,
    taxon_rank            text        NOT NULL,
    taxon_group_id        uuid        NOT NULL REFERENCES taxon_groups,
    -- Grid in degrees to which places are generalised in public; 0 is withheld, empty is not sensitive
    sensitivity_grid      double precision CHECK (sensitivity_grid IN (0, 1, 0.1, 0.01, 0.001)),
    sensitivity_reason    text,
    sensitivity_review_by date,
    happened_at           timestamptz,
    recorded_at           timestamptz NOT NULL,
    recorded_by           uuid        NOT NULL REFERENCES accounts,
    revised_at            timestamptz,
    revised_by            uuid REFERENCES accounts,
    revision_reason       text,
    import_id             uuid REFERENCES imports,
    CONSTRAINT taxa_sensitivity_has_reason_and_review
        CHECK (sensitivity_grid IS NULL OR (sensitivity_reason IS NOT NULL AND sensitivity_review_by IS NOT NULL))
);
CREATE INDEX taxa_by_group ON taxa (taxon_group_id);
CREATE INDEX taxa_by_words ON taxa USING gin ((scientific_name || ' ' || vernacular_name) gin_trgm_ops);

-- A caution is shown where someone may act: on the call, on the way, at the scene.
CREATE TABLE cautions (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    taxon_group_id  uuid        NOT NULL REFERENCES taxon_groups,
    audience        text        NOT NULL CHECK (audience IN ('caller', 'rescuer')),
    words           text        NOT NULL,
    source          text        NOT NULL,
    read_on         date        NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);

SELECT keep_revisions('taxon_groups'), keep_revisions('taxa'), keep_revisions('cautions');
