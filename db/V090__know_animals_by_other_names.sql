-- Other names of a taxon, by which old records and other people call it: scientific names that it had or has besides the
-- accepted one, and common names with their language.
CREATE TABLE taxon_synonyms (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    taxon_id        uuid        NOT NULL REFERENCES taxa,
    kind            text        NOT NULL CHECK (kind IN ('scientificName', 'vernacularName')),
    name            text        NOT NULL CHECK (name = btrim(name) AND name <> ''),
    -- of a common name, as RFC 5646 has it
    language        text,
    source          text        NOT NULL,
    ended_at        timestamptz,
    ended_because   text,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_common_name_has_a_language CHECK ((kind = 'vernacularName') = (language IS NOT NULL)),
    CONSTRAINT ending_a_synonym_has_time_and_reason CHECK (num_nonnulls(ended_at, ended_because) IN (0, 2))
);
CREATE UNIQUE INDEX a_taxon_has_another_name_once ON taxon_synonyms (taxon_id, kind, lower(name)) WHERE ended_at IS NULL;

SELECT keep_revisions('taxon_synonyms');
SELECT belongs_by('taxon_synonyms', 'taxon_id');
