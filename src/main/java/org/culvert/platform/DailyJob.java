package org.culvert.platform;

/** Work that some node does once a day. A bean of this type is found by {@link JobQueue}. */
public interface DailyJob {
    /** Name under which it is scheduled; it must not change. */
    String name();

    /** Does the day's work; may be done again where a node has died in the middle. */
    void run();
}
