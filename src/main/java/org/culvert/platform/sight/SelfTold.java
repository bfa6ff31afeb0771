package org.culvert.platform.sight;

/** A view that knows by itself whether it is the asker's own, and how strictly its place is kept. */
public interface SelfTold {
    /** Whether the asker may see it exactly, where the table says so of their own records. */
    boolean own();

    /** 0 for a place that is not sensitive, the grid in degrees, or {@link Sight#WITHHELD}. */
    double strictness();
}
