package org.culvert.road;

import java.util.UUID;

/** Hears of a new version of the roads, in the transaction of its import. Rooms above implement it. */
public interface NetworkListener {
    void becameCurrent(UUID networkId);
}
