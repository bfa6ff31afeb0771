-- Under which licence archives of occurrences go out, and whom to write to about them: an office, no person.
ALTER TABLE disclosure_settings
    ADD COLUMN archive_licence text,
    ADD COLUMN archive_contact text,
    ADD CONSTRAINT a_licence_of_archives_is_an_address CHECK (archive_licence ~ '^https?://[^[:space:]]+$'),
    ADD CONSTRAINT a_contact_of_archives_is_an_address CHECK (archive_contact ~ '^[^[:space:]@]+@[^[:space:]@]+$');
