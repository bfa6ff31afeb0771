-- Individuals, their cases, who answers for them, where they are, how it ended.

CREATE TABLE animals (
    id                                 uuid PRIMARY KEY,
    version                            integer     NOT NULL DEFAULT 0,
    taxon_id                           uuid        NOT NULL REFERENCES taxa,
    identification_verification_status text        NOT NULL CHECK (identification_verification_status IN
                                                   ('unverified', 'fromPhotograph', 'seenByMember', 'seenByVet')),
    sex                                text        NOT NULL CHECK (sex IN ('female', 'male', 'unknown')),
    life_stage                         text,
    mother_id                          uuid REFERENCES animals,
    natural_marks                      text,
    happened_at                        timestamptz,
    recorded_at                        timestamptz NOT NULL,
    recorded_by                        uuid        NOT NULL REFERENCES accounts,
    revised_at                         timestamptz,
    revised_by                         uuid REFERENCES accounts,
    revision_reason                    text,
    import_id                          uuid REFERENCES imports,
    CONSTRAINT nobody_is_their_own_mother CHECK (mother_id <> id)
);

CREATE SEQUENCE case_numbers;

-- One animal's one time with the network. Origin, cause and fate belong to it. Young and hatchlings have their mother's
-- found place: origin_of_mother says so.
CREATE TABLE cases (
    id               uuid PRIMARY KEY,
    version          integer     NOT NULL DEFAULT 0,
    number           bigint      NOT NULL UNIQUE DEFAULT nextval('case_numbers'),
    animal_id        uuid        NOT NULL REFERENCES animals,
    incident_id      uuid        NOT NULL REFERENCES incidents,
    attendance_id    uuid REFERENCES attendances,
    found_place_id   uuid REFERENCES places,
    origin           text        NOT NULL CHECK (origin IN ('found', 'ofMother', 'unknown')),
    dependent_young  boolean     NOT NULL DEFAULT false,
    cause            text        NOT NULL REFERENCES causes,
    happened_at      timestamptz NOT NULL,
    recorded_at      timestamptz NOT NULL,
    recorded_by      uuid        NOT NULL REFERENCES accounts,
    revised_at       timestamptz,
    revised_by       uuid REFERENCES accounts,
    revision_reason  text,
    import_id        uuid REFERENCES imports,
    CONSTRAINT a_known_origin_has_a_place CHECK ((origin = 'unknown') = (found_place_id IS NULL))
);
CREATE INDEX cases_by_animal ON cases (animal_id);
CREATE INDEX cases_by_incident ON cases (incident_id);

-- Who answers for the animal, from when to when. Links of one case never overlap; gaps are shown, not refused.
CREATE TABLE custody_links (
    id                     uuid PRIMARY KEY,
    version                integer     NOT NULL DEFAULT 0,
    case_id                uuid        NOT NULL REFERENCES cases,
    holder_member_id       uuid REFERENCES members,
    holder_organisation_id uuid REFERENCES organisations,
    holder_person_id       uuid REFERENCES personal.people,
    held                   tstzrange   NOT NULL,
    authorisation          text,
    happened_at            timestamptz,
    recorded_at            timestamptz NOT NULL,
    recorded_by            uuid        NOT NULL REFERENCES accounts,
    revised_at             timestamptz,
    revised_by             uuid REFERENCES accounts,
    revision_reason        text,
    import_id              uuid REFERENCES imports,
    CONSTRAINT one_holder_answers_for_an_animal
        CHECK (num_nonnulls(holder_member_id, holder_organisation_id, holder_person_id) = 1),
    CONSTRAINT custody_lasts CHECK (NOT isempty(held) AND NOT lower_inf(held)),
    CONSTRAINT custody_of_a_case_never_overlaps EXCLUDE USING gist (case_id WITH =, held WITH &&)
);

-- A hand-over is pending until the taker accepts; the giver stays holder.
CREATE TABLE hand_overs (
    id                    uuid PRIMARY KEY,
    version               integer     NOT NULL DEFAULT 0,
    case_id               uuid        NOT NULL REFERENCES cases,
    taker_member_id       uuid REFERENCES members,
    taker_organisation_id uuid REFERENCES organisations,
    taker_person_id       uuid REFERENCES personal.people,
    accepted_at           timestamptz,
    refused_at            timestamptz,
    refused_reason        text,
    happened_at           timestamptz NOT NULL,
    recorded_at           timestamptz NOT NULL,
    recorded_by           uuid        NOT NULL REFERENCES accounts,
    revised_at            timestamptz,
    revised_by            uuid REFERENCES accounts,
    revision_reason       text,
    import_id             uuid REFERENCES imports,
    CONSTRAINT one_taker_is_asked
        CHECK (num_nonnulls(taker_member_id, taker_organisation_id, taker_person_id) = 1),
    CONSTRAINT a_hand_over_is_accepted_or_refused CHECK (num_nonnulls(accepted_at, refused_at) <= 1),
    CONSTRAINT a_refusal_has_a_reason CHECK ((refused_at IS NULL) = (refused_reason IS NULL))
);
CREATE UNIQUE INDEX one_hand_over_is_pending_at_a_time ON hand_overs (case_id)
    WHERE accepted_at IS NULL AND refused_at IS NULL;

-- Where the animal is; a day at the clinic changes this and not custody.
CREATE TABLE whereabouts (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    case_id         uuid        NOT NULL REFERENCES cases,
    organisation_id uuid REFERENCES organisations,
    member_id       uuid REFERENCES members,
    words           text,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT whereabouts_say_where CHECK (num_nonnulls(organisation_id, member_id, words) >= 1)
);
CREATE INDEX whereabouts_by_case ON whereabouts (case_id, happened_at);

-- How a case ended. Kept under permit and with another holder are states, not ends, and are not in this list.
CREATE TABLE fates (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    case_id         uuid        NOT NULL CONSTRAINT a_case_ends_once UNIQUE REFERENCES cases,
    fate            text        NOT NULL CHECK (fate IN ('released', 'died', 'euthanased', 'deadWhenFound',
                                'diedOnTheWay', 'deadOnReachingClinic', 'leftWell', 'escaped', 'unknown')),
    method          text,
    approved_by     text,
    barbiturate     boolean     NOT NULL DEFAULT false,
    release_id      uuid,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    UNIQUE (case_id, barbiturate),
    CONSTRAINT euthanasia_has_method_and_approver
        CHECK (fate <> 'euthanased' OR num_nonnulls(method, approved_by) = 2),
    CONSTRAINT a_release_is_a_release CHECK (release_id IS NULL OR fate = 'released')
);

-- A dead animal has a holder and a disposal too; a body with barbiturate in it is never left out for scavengers.
CREATE TABLE bodies (
    id                     uuid PRIMARY KEY,
    version                integer     NOT NULL DEFAULT 0,
    case_id                uuid        NOT NULL CONSTRAINT a_case_leaves_one_body UNIQUE REFERENCES cases,
    holder_member_id       uuid REFERENCES members,
    holder_organisation_id uuid REFERENCES organisations,
    holder_person_id       uuid REFERENCES personal.people,
    barbiturate            text        NOT NULL CHECK (barbiturate IN ('yes', 'no', 'unknown')),
    disposal               text CHECK (disposal IN ('leftInPlace', 'movedOffRoad', 'buriedDeep', 'incinerated',
                                                    'clinicWaste', 'museum', 'keptForPathology')),
    disposed_at            timestamptz,
    happened_at            timestamptz NOT NULL,
    recorded_at            timestamptz NOT NULL,
    recorded_by            uuid        NOT NULL REFERENCES accounts,
    revised_at             timestamptz,
    revised_by             uuid REFERENCES accounts,
    revision_reason        text,
    import_id              uuid REFERENCES imports,
    CONSTRAINT a_body_has_at_most_one_holder
        CHECK (num_nonnulls(holder_member_id, holder_organisation_id, holder_person_id) <= 1),
    CONSTRAINT disposal_has_a_time CHECK ((disposal IS NULL) = (disposed_at IS NULL)),
    CONSTRAINT a_body_with_barbiturate_is_never_left_out
        CHECK (barbiturate = 'no' OR disposal IS NULL OR disposal NOT IN ('leftInPlace', 'movedOffRoad'))
);

SELECT keep_revisions('animals'), keep_revisions('cases'), keep_revisions('custody_links'),
       keep_revisions('hand_overs'), keep_revisions('whereabouts'), keep_revisions('fates'), keep_revisions('bodies');
