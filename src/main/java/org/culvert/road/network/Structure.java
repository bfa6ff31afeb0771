package org.culvert.road.network;

/** What carries a piece of road. */
public enum Structure {
    NONE,
    BRIDGE,
    TUNNEL
}
