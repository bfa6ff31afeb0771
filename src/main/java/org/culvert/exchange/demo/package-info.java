/**
 * Owns the invented region: its land, roads, people and calls, and the truth that was planted in it. The generator uses
 * the JDK alone; the loader goes through the services of the rooms below. Its invariant: the same settings and seed
 * give the same bytes on every machine.
 */
@NullMarked
package org.culvert.exchange.demo;

import org.jspecify.annotations.NullMarked;
