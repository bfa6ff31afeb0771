-- Prohibited kinds, and where one law ends and the next begins.

ALTER TABLE release_rules
    DROP CONSTRAINT release_rules_test_check,
    ADD CONSTRAINT release_rules_test_check CHECK (test IN (
        'noRelease', 'foundPlaceFirst', 'greatestDistance', 'landownerConsent', 'parkApproval', 'borderApproval',
        'officerApproval', 'sameCatchment', 'waterWithin', 'activePeriod', 'fairWeather', 'daysInCare', 'fitness',
        'notWithPets', 'matesGoToo'));

ALTER TABLE land_areas
    DROP CONSTRAINT land_areas_kind_check,
    ADD CONSTRAINT land_areas_kind_check CHECK (kind IN ('jurisdiction', 'catchment', 'water', 'nestingGround',
        'protectedArea', 'property', 'excluded', 'burnt', 'flooded')),
    ADD CONSTRAINT a_jurisdiction_is_named_by_its_code
        CHECK (kind <> 'jurisdiction' OR name ~ '^[A-Z]{2}(-[A-Z0-9]{1,3})?$');

-- Where the line runs is told from maps now.
UPDATE release_rules SET words = 'Never across a state line without approval.',
    version = version + 1, revised_at = now(), revised_by = '01920000-0000-7000-8000-000000000000',
    revision_reason = 'whether a line is crossed is told from maps, and asked where they show that one is, or do not tell'
WHERE id = '01920000-0000-7000-8000-000000001013';
UPDATE release_rules SET words = 'No state line is crossed without permission.',
    version = version + 1, revised_at = now(), revised_by = '01920000-0000-7000-8000-000000000000',
    revision_reason = 'whether a line is crossed is told from maps, and asked where they show that one is, or do not tell'
WHERE id = '01920000-0000-7000-8000-000000001016';

INSERT INTO release_rules (id, jurisdiction, kind, scientific_name, except_scientific_names, applies_to, test,
    allowed_grounds, order_of_preference, words, source, read_on, review_by, valid_from, recorded_at, recorded_by)
SELECT ('01920000-0000-7000-8000-00000000' || id)::uuid, 'AU-VIC', 'guidance', named, '[]', 'any', 'noRelease', '[]', '[]',
    'Introduced wildlife is not rehabilitated and released at all: deer, quail that are not indigenous, pheasants and'
        || ' partridges. This row is for the ' || told || ' among them.',
    'Wildlife Rehabilitator Authorisation Guide, environment department of Victoria, 30 June 2023. It names deer, quail,'
        || ' pheasants and partridges; that ' || named || ' is among them is from memory. Check your local code and your'
        || ' licensed vet.',
    '2026-11-25', '2027-11-25', '2023-06-30', now(), '01920000-0000-7000-8000-000000000000'
FROM (VALUES
    ('1031', 'Cervidae', 'deer'),
    ('1032', 'Cervus', 'deer'),
    ('1033', 'Rusa', 'deer'),
    ('1034', 'Dama', 'deer'),
    ('1035', 'Axis', 'deer'),
    ('1036', 'Callipepla', 'quail'),
    ('1037', 'Colinus', 'quail'),
    ('1038', 'Phasianus', 'pheasants'),
    ('1039', 'Alectoris', 'partridges'),
    ('1040', 'Perdix', 'partridges')) AS listed (id, named, told);
