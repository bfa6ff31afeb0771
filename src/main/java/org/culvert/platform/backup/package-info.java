/**
 * Owns backup and restore: one file with every record, taken while the server serves, and loaded into an empty database of
 * this or a later major version of PostgreSQL. It may use the JDK, the PostgreSQL driver, Flyway, Jackson and
 * {@code platform.database}, and nothing of the rooms, since it runs without the server. Its one invariant: a file under its
 * final name is whole, and a restored database holds exactly what the file says or nothing at all.
 */
@NullMarked
package org.culvert.platform.backup;

import org.jspecify.annotations.NullMarked;
