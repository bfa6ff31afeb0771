-- Many animals at once: a proposal of who takes which, for somebody to approve; authorisations by order.
CREATE TABLE placement_proposals (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    -- whose animals they are; null: they were named one by one
    from_member_id  uuid REFERENCES members,
    words           text        NOT NULL,
    -- whether it is known that there is no better
    is_best         boolean     NOT NULL,
    approved_at     timestamptz,
    approved_by     uuid REFERENCES accounts,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT approving_a_proposal_has_time_and_name CHECK (num_nonnulls(approved_at, approved_by) IN (0, 2))
);

CREATE TABLE placement_proposal_rows (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    proposal_id       uuid        NOT NULL REFERENCES placement_proposals,
    case_id           uuid        NOT NULL REFERENCES cases,
    -- null: nobody was found
    carer_id          uuid REFERENCES members,
    burden_kilometres double precision,
    words             text        NOT NULL,
    -- once approved
    placement_id      uuid REFERENCES placements,
    happened_at       timestamptz,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT an_animal_is_proposed_once UNIQUE (proposal_id, case_id),
    CONSTRAINT what_is_placed_has_a_carer CHECK (placement_id IS NULL OR carer_id IS NOT NULL)
);

-- By whose order, where an authority gave it for a fire, a flood or a heat.
ALTER TABLE authorisations ADD COLUMN by_order text;

SELECT keep_revisions('placement_proposals'), keep_revisions('placement_proposal_rows'),
       belongs_by('placement_proposal_rows', 'proposal_id', 'case_id');
CREATE TRIGGER a_proposal_is_approved_once BEFORE UPDATE ON placement_proposals FOR EACH ROW
    WHEN (OLD.approved_at IS NOT NULL) EXECUTE FUNCTION refuse_change();
