/**
 * What an aftercare plan asks for on which day, and how a weight runs.
 *
 * <p>Pure: it uses the JDK and Commons Statistics alone, and is told the zone and the day. Its one invariant: every task lies
 * within its step and its plan, and no task is there twice.
 */
@NullMarked
package org.culvert.care.schedule;

import org.jspecify.annotations.NullMarked;
