package org.culvert.platform;

import java.util.List;

/** The roles of people and programs; what says nothing about roles is refused. */
public final class Role {
    public static final String DISPATCHER = "dispatcher";
    public static final String RESCUER = "rescuer";
    public static final String CLINIC = "clinic";
    public static final String CARER = "carer";
    public static final String COORDINATOR = "coordinator";
    public static final String ROADS_AUTHORITY = "roads-authority";
    public static final String OFFICER = "officer";
    public static final String ADMIN = "admin";

    /** Somebody named in an agreement, who sees exact records under it. */
    public static final String RECIPIENT = "recipient";

    public static final List<String> ALL =
            List.of(DISPATCHER, RESCUER, CLINIC, CARER, COORDINATOR, ROADS_AUTHORITY, OFFICER, RECIPIENT, ADMIN);

    private Role() {}
}
