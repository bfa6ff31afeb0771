/**
 * Owns the server's way to its PostgreSQL: the one the network configured, or one of its own that it starts, watches and
 * stops. It may use the JDK, the PostgreSQL driver and the unpacking library, and nothing of the rooms, since it runs
 * before them. Its one invariant: the server never runs on a database of its own that could lose a committed record.
 */
@NullMarked
package org.culvert.platform.database;

import org.jspecify.annotations.NullMarked;
