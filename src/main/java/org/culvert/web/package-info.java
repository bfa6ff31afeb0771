/**
 * Pages for people.
 *
 * <p>Uses every room below it and is used by none. Its one invariant: a page says the same as the API does, in plain
 * words, and brings nothing from another host.
 */
@NullMarked
package org.culvert.web;

import org.jspecify.annotations.NullMarked;
