-- Release rules ask more than a distance and a consent, and an assessment keeps all that it was made on.

ALTER TABLE release_rules
    ADD COLUMN greatest_days integer CHECK (greatest_days > 0),
    -- where an animal should rather go, in the rule's own order and words
    ADD COLUMN order_of_preference jsonb NOT NULL DEFAULT '[]',
    DROP CONSTRAINT release_rules_test_check,
    ADD CONSTRAINT release_rules_test_check CHECK (test IN (
        'foundPlaceFirst', 'greatestDistance', 'landownerConsent', 'parkApproval', 'borderApproval', 'officerApproval',
        'sameCatchment', 'waterWithin', 'activePeriod', 'fairWeather', 'daysInCare', 'fitness', 'notWithPets', 'matesGoToo')),
    DROP CONSTRAINT release_rules_applies_to_check,
    ADD CONSTRAINT release_rules_applies_to_check CHECK (applies_to IN ('adult', 'orphan', 'hatchling', 'any')),
    DROP CONSTRAINT release_rules_unknown_origin_outcome_check,
    ADD CONSTRAINT release_rules_unknown_origin_outcome_check
        CHECK (unknown_origin_outcome IN ('notReleasable', 'withinRange', 'withinRangeWithApproval')),
    DROP CONSTRAINT a_distance_rule_has_its_distance,
    ADD CONSTRAINT a_distance_rule_has_its_distance
        CHECK ((test IN ('greatestDistance', 'waterWithin')) = (greatest_distance_metres IS NOT NULL)),
    ADD CONSTRAINT a_rule_of_days_has_its_days CHECK ((test = 'daysInCare') = (greatest_days IS NOT NULL));

-- What was known beside the animal and the place: approvals, holds, fitness, species, land, roads, hotspots, the hour.
ALTER TABLE assessments ADD COLUMN circumstances jsonb;

UPDATE release_rules SET order_of_preference =
        '["where it was found", "as near to it as possible, by the home range of its kind"]',
    version = version + 1, revised_at = now(), revised_by = '01920000-0000-7000-8000-000000000000',
    revision_reason = 'its order of preference was entered beside it'
WHERE id = '01920000-0000-7000-8000-000000001004';

-- Regulations that were read and hold; each says what was read.
INSERT INTO release_rules (id, jurisdiction, kind, except_scientific_names, applies_to, test, greatest_days,
    allowed_grounds, unknown_origin_outcome, order_of_preference, consents, words, source, read_on, review_by, valid_from,
    recorded_at, recorded_by) VALUES
    ('01920000-0000-7000-8000-000000001011', 'US-WA', 'statute', '[]', 'any', 'foundPlaceFirst', NULL,
     '[{"key": "endangers", "words": "going back there would endanger the animal or people"}]', 'withinRange', '["the area that it was taken from", "fit habitat within the normal range of its kind"]', 'For deer and their kin, large carnivores, coyotes and beaver the department approves the place beforehand. Who lets it go is no member of the public.',
     'It goes back to the area that it was taken from, unless that endangers it or people; else, or where its origin is not known, to fit habitat within the normal range of its kind.',
     'Washington Administrative Code 220-450-110, Washington State. From when it holds the reading does not say: entered from the day on which it was read. Check your local code and your licensed vet.',
     '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001012', 'US-MD', 'statute', '[]', 'any', 'foundPlaceFirst', NULL,
     '[{"key": "notSuitable", "words": "there is no suitable habitat at the point of capture"}]', NULL, '["suitable habitat as near as possible to the point of capture"]', NULL,
     'It goes to suitable habitat as near as possible to the point where it was captured.',
     'Code of Maryland Regulations 08.03.12.20. From when it holds the reading does not say: entered from the day on which it was read. Check your local code and your licensed vet.',
     '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001013', 'US-MD', 'statute', '[]', 'any', 'borderApproval', NULL,
     '[]', NULL, '[]', NULL,
     'Never across a state line without approval. Where found place and site lie in one state this is met: say so in the approval.',
     'Code of Maryland Regulations 08.03.12.20. From when it holds the reading does not say: entered from the day on which it was read. Check your local code and your licensed vet.',
     '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001014', 'US-DC', 'statute', '[]', 'any', 'foundPlaceFirst', NULL,
     '[{"key": "notPossible", "words": "returning it to the area of capture is not possible"}]', NULL, '["the area of capture"]', NULL,
     'It goes back to the area of capture when that is possible.',
     'District of Columbia Municipal Regulations 19-1567. From when it holds the reading does not say: entered from the day on which it was read. Check your local code and your licensed vet.',
     '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001015', 'US-DC', 'statute', '[]', 'any', 'landownerConsent', NULL,
     '[]', NULL, '[]', NULL,
     'The landowner has given permission in writing.',
     'District of Columbia Municipal Regulations 19-1567. From when it holds the reading does not say: entered from the day on which it was read. Check your local code and your licensed vet.',
     '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001016', 'US-DC', 'statute', '[]', 'any', 'borderApproval', NULL,
     '[]', NULL, '[]', NULL,
     'No state line is crossed without permission. Where found place and site lie in the District this is met: say so in the approval.',
     'District of Columbia Municipal Regulations 19-1567. From when it holds the reading does not say: entered from the day on which it was read. Check your local code and your licensed vet.',
     '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001021', 'US-WA', 'statute', '[]', 'any', 'daysInCare', 180,
     '[]', NULL, '[]', NULL,
     'Care ends within 180 days; over-wintering, moulting and placement are named grounds for an extension.',
     'Washington Administrative Code 220-450, Washington State. From when it holds the reading does not say: entered from the day on which it was read. Check your local code and your licensed vet.',
     '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001022', 'US-WI', 'statute', '[]', 'any', 'daysInCare', 180,
     '[]', NULL, '[]', NULL,
     'Care ends within 180 days.',
     'Wisconsin Administrative Code NR 19.78. From when it holds the reading does not say: entered from the day on which it was read. Check your local code and your licensed vet.',
     '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001023', 'US-CO', 'statute', '[]', 'any', 'daysInCare', 180,
     '[]', NULL, '[]', NULL,
     'Care ends within 180 days.',
     '2 Code of Colorado Regulations 406-14, section 1405. From when it holds the reading does not say: entered from the day on which it was read. Check your local code and your licensed vet.',
     '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001024', 'CA-QC', 'statute', '[]', 'any', 'daysInCare', 365,
     '[]', NULL, '[]', NULL,
     'Care ends within one year, entered as 365 days.',
     'Quebec, C-61.1, r. 5, section 36. From when it holds the reading does not say: entered from the day on which it was read. Check your local code and your licensed vet.',
     '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000');
