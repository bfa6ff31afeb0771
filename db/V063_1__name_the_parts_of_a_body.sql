-- Parts of the body that a finding may name, by the plan of the body; standard anatomy, from memory. Findings from before keep
-- their words.

ALTER TABLE taxon_groups
    -- empty: not told, and any part may be named
    ADD COLUMN body_plan text CHECK (body_plan IN ('turtle', 'lizard', 'snake', 'frog', 'bird', 'bat', 'mammal'));

CREATE TABLE body_parts (
    key    text PRIMARY KEY CHECK (key ~ '^[a-z][a-z0-9]*(-[a-z0-9]+)*$'),
    name   text    NOT NULL,
    -- whether there is a left one and a right one
    paired boolean NOT NULL,
    -- the plans of a body that have it
    plans  text[]  NOT NULL CHECK (plans <@ ARRAY['turtle', 'lizard', 'snake', 'frog', 'bird', 'bat', 'mammal']),
    -- its place in the list
    place  integer NOT NULL CONSTRAINT parts_of_a_body_have_an_order UNIQUE
);

INSERT INTO body_parts (key, name, paired, plans, place)
SELECT row.key, row.name, row.paired, row.plans::text[], row_number() OVER ()
FROM (VALUES
    ('head', 'head', false, '{turtle,lizard,snake,frog,bird,bat,mammal}'),
    ('skull', 'skull', false, '{turtle,lizard,snake,frog,bird,bat,mammal}'),
    ('eye', 'eye', true, '{turtle,lizard,snake,frog,bird,bat,mammal}'),
    ('ear', 'ear', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('nostril', 'nostril', true, '{turtle,lizard,snake,frog,bird,bat,mammal}'),
    ('mouth', 'mouth', false, '{turtle,lizard,snake,frog,bird,bat,mammal}'),
    ('tongue', 'tongue', false, '{turtle,lizard,snake,frog,bird,bat,mammal}'),
    ('upper-jaw', 'upper jaw', false, '{turtle,lizard,snake,frog,bat,mammal}'),
    ('lower-jaw', 'lower jaw', false, '{turtle,lizard,snake,frog,bat,mammal}'),
    ('upper-bill', 'upper bill', false, '{bird}'),
    ('lower-bill', 'lower bill', false, '{bird}'),
    ('teeth', 'teeth', false, '{lizard,snake,bat,mammal}'),
    ('neck', 'neck', false, '{turtle,lizard,snake,bird,bat,mammal}'),
    ('crop', 'crop', false, '{bird}'),
    ('spine', 'spine', false, '{turtle,lizard,snake,frog,bird,bat,mammal}'),
    ('chest', 'chest', false, '{lizard,snake,frog,bird,bat,mammal}'),
    ('keel', 'keel of the breastbone', false, '{bird}'),
    ('rib', 'ribs', true, '{lizard,snake,bird,bat,mammal}'),
    ('abdomen', 'abdomen', false, '{lizard,snake,frog,bird,bat,mammal}'),
    ('pouch', 'pouch', false, '{mammal}'),
    ('pelvis', 'pelvis', false, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('ilium', 'ilium', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('ischium', 'ischium', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('pubis', 'pubis', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('cloaca', 'cloaca', false, '{turtle,lizard,snake,frog,bird,mammal}'),
    ('tail', 'tail', false, '{turtle,lizard,snake,bat,mammal}'),
    ('tail-feathers', 'tail feathers', false, '{bird}'),
    ('flight-feathers', 'flight feathers of the wing', true, '{bird}'),
    ('wing', 'wing', true, '{bird,bat}'),
    ('fore-limb', 'fore limb', true, '{turtle,lizard,frog,mammal}'),
    ('shoulder', 'shoulder', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('humerus', 'humerus', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('elbow', 'elbow', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('radius', 'radius', true, '{turtle,lizard,bird,bat,mammal}'),
    ('ulna', 'ulna', true, '{turtle,lizard,bird,bat,mammal}'),
    ('wrist', 'wrist', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('thumb', 'thumb', true, '{bat,mammal}'),
    ('fore-foot', 'fore foot', true, '{turtle,lizard,frog,mammal}'),
    ('propatagium', 'wing membrane before the arm', true, '{bird,bat}'),
    ('plagiopatagium', 'wing membrane between arm and body', true, '{bat}'),
    ('dactylopatagium', 'wing membrane between the fingers', true, '{bat}'),
    ('uropatagium', 'membrane between the legs', false, '{bat}'),
    ('wing-digit', 'finger of the wing', true, '{bat}'),
    ('hind-limb', 'hind limb', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('hip', 'hip', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('femur', 'femur', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('knee', 'knee', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('tibia', 'tibia', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('fibula', 'fibula', true, '{turtle,lizard,bird,bat,mammal}'),
    ('ankle', 'ankle', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('hind-foot', 'hind foot', true, '{turtle,lizard,frog,bird,bat,mammal}'),
    ('claw', 'claws', true, '{turtle,lizard,bird,bat,mammal}'),
    ('skin', 'skin', false, '{turtle,lizard,snake,frog,bird,bat,mammal}'),
    ('carapace', 'carapace', false, '{turtle}'),
    ('plastron', 'plastron', false, '{turtle}'),
    ('bridge', 'bridge of the shell', true, '{turtle}'),
    ('nuchal', 'nuchal scute', false, '{turtle}'),
    ('vertebral-1', 'vertebral scute 1', false, '{turtle}'),
    ('vertebral-2', 'vertebral scute 2', false, '{turtle}'),
    ('vertebral-3', 'vertebral scute 3', false, '{turtle}'),
    ('vertebral-4', 'vertebral scute 4', false, '{turtle}'),
    ('vertebral-5', 'vertebral scute 5', false, '{turtle}'),
    ('costal-1', 'costal scute 1', true, '{turtle}'),
    ('costal-2', 'costal scute 2', true, '{turtle}'),
    ('costal-3', 'costal scute 3', true, '{turtle}'),
    ('costal-4', 'costal scute 4', true, '{turtle}'),
    ('marginal-1', 'marginal scute 1', true, '{turtle}'),
    ('marginal-2', 'marginal scute 2', true, '{turtle}'),
    ('marginal-3', 'marginal scute 3', true, '{turtle}'),
    ('marginal-4', 'marginal scute 4', true, '{turtle}'),
    ('marginal-5', 'marginal scute 5', true, '{turtle}'),
    ('marginal-6', 'marginal scute 6', true, '{turtle}'),
    ('marginal-7', 'marginal scute 7', true, '{turtle}'),
    ('marginal-8', 'marginal scute 8', true, '{turtle}'),
    ('marginal-9', 'marginal scute 9', true, '{turtle}'),
    ('marginal-10', 'marginal scute 10', true, '{turtle}'),
    ('marginal-11', 'marginal scute 11', true, '{turtle}'),
    ('marginal-12', 'marginal scute 12', true, '{turtle}'),
    ('intergular', 'intergular scute', false, '{turtle}'),
    ('gular', 'gular scute', true, '{turtle}'),
    ('humeral', 'humeral scute', true, '{turtle}'),
    ('pectoral', 'pectoral scute', true, '{turtle}'),
    ('abdominal', 'abdominal scute', true, '{turtle}'),
    ('femoral', 'femoral scute', true, '{turtle}'),
    ('anal', 'anal scute', true, '{turtle}')
) AS row (key, name, paired, plans);

ALTER TABLE findings
    -- empty: told in words alone
    ADD COLUMN part text REFERENCES body_parts,
    ADD COLUMN kind text CHECK (kind IN ('fracture', 'luxation', 'wound', 'burn', 'abrasion', 'bruise', 'swelling', 'missing',
                                         'deformity', 'bleeding', 'discharge', 'infection', 'parasites', 'foreignBody',
                                         'other'));

CREATE FUNCTION require_side_of_part() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (SELECT 1 FROM body_parts p WHERE p.key = NEW.part
               AND p.paired <> (NEW.side IN ('left', 'right', 'both'))) THEN
        RAISE EXCEPTION 'side of a part' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'a_paired_part_and_no_other_has_its_side', TABLE = TG_TABLE_NAME;
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER a_paired_part_and_no_other_has_its_side BEFORE INSERT OR UPDATE ON findings
    FOR EACH ROW EXECUTE FUNCTION require_side_of_part();
