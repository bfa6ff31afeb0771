package org.culvert.web.forms;

/** Things of other rooms that a field may name. */
public enum Reference {
    groups,
    organisations,
    clinics,
    members,
    taxa,
    syndromes,
    conditions,
    limits,
    causes
}
