/**
 * Which carer could take which animal: tests of one with the other, and the best way to share out many.
 *
 * <p>Pure: knows neither the server nor the database. Its one invariant: what is not known never passes a test of law.
 */
@NullMarked
package org.culvert.care.matching;

import org.jspecify.annotations.NullMarked;
