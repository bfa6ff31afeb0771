/**
 * Everything that is recorded of one animal in one document, for an officer who audits it, and a log of who did.
 *
 * <p>It may use every room below, and is used by nobody.
 *
 * <p>Its one invariant: no officer reads an audit file without an inspection that says when and why.
 */
@NullMarked
package org.culvert.exchange.auditfile;

import org.jspecify.annotations.NullMarked;
