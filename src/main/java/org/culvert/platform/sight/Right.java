package org.culvert.platform.sight;

import java.util.Map;

/**
 * What a role may see of a field: when as it is, and what otherwise.
 *
 * @param exact when the field is shown as it is
 * @param otherwise what is shown in its place when it is not
 */
record Right(Exact exact, Otherwise otherwise) {
    /** In the order of width. */
    enum Exact {
        NEVER,
        OWN,
        ALWAYS
    }

    /** In the order of width: a generalised field is exact where the species is not sensitive, a coarse one never. */
    enum Otherwise {
        NOTHING,
        COARSE,
        GENERAL
    }

    static final Right NONE = new Right(Exact.NEVER, Otherwise.NOTHING);

    private static final Map<String, Right> BY_CELL = Map.of(
            "yes", new Right(Exact.ALWAYS, Otherwise.NOTHING),
            "–", NONE,
            "own", new Right(Exact.OWN, Otherwise.NOTHING),
            "general", new Right(Exact.NEVER, Otherwise.GENERAL),
            "coarse", new Right(Exact.NEVER, Otherwise.COARSE),
            "own/general", new Right(Exact.OWN, Otherwise.GENERAL),
            "own/coarse", new Right(Exact.OWN, Otherwise.COARSE));

    /** @throws IllegalArgumentException if a cell is none of those that the table may have */
    static Right of(String cell) {
        Right right = BY_CELL.get(cell);
        if (right == null) {
            throw new IllegalArgumentException("there is no cell \"" + cell + "\"; there are "
                    + BY_CELL.keySet().stream().sorted().toList());
        }
        return right;
    }

    /** The wider of both, for somebody with several roles. */
    Right or(Right other) {
        return new Right(
                exact.compareTo(other.exact) >= 0 ? exact : other.exact,
                otherwise.compareTo(other.otherwise) >= 0 ? otherwise : other.otherwise);
    }

    boolean isNothing() {
        return equals(NONE);
    }
}
