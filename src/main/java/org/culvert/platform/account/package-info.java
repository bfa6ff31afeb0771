/**
 * Who may sign in, and how: people by form with a password and a session, programs by tokens.
 *
 * <p>It uses the floor of the platform alone.
 *
 * <p>No secret is kept that could be used: passwords as bcrypt hashes, everything else as SHA-256 digests.
 */
@NullMarked
package org.culvert.platform.account;

import org.jspecify.annotations.NullMarked;
