-- Records kept before attendances were tell how an incident ended, and nothing of who went.
ALTER TABLE closings DROP CONSTRAINT closings_outcome_check;
ALTER TABLE closings ADD CONSTRAINT closings_outcome_check
    CHECK (outcome IN ('leftWell', 'notAttendedUnsafe', 'notAttendedNobody', 'adviceOnly', 'passedOn')
        OR (outcome IN ('collected', 'deadChecked', 'notFound') AND import_id IS NOT NULL));
