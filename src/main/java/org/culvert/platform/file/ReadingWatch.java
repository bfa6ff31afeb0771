package org.culvert.platform.file;

/** Hears how far the reading of a file has come. It is called often, and decides itself what it notes. */
@FunctionalInterface
public interface ReadingWatch {
    /** What is done with a file, in this order; not every file needs each. */
    enum Step {
        /** Its octets are read. */
        octets,

        /** Features are read, and entered where each is entered by itself. */
        features,

        /** What was read is put together. */
        joining,

        /** What was made of it is kept. */
        keeping
    }

    /** Where nobody asks. */
    ReadingWatch NOBODY = (step, done, whole) -> {};

    /** @param whole how many there are; 0 where that is not known */
    void hear(Step step, long done, long whole);
}
