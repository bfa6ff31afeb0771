/**
 * The floor every room stands on: problem details, accounts, records with two clocks, jobs, the database.
 */
@NullMarked
package org.culvert.platform;

import org.jspecify.annotations.NullMarked;
