/**
 * Owns what is promised to people: how long the law wants them kept, hiding, erasure, and their own data on request.
 *
 * <p>It may use the floor below it and reads across the rooms by views and functions of the database alone.
 *
 * <p>Its invariant: nobody is erased while a duty to keep them lasts, and who was erased does not come back.
 */
@NullMarked
package org.culvert.platform.personal;

import org.jspecify.annotations.NullMarked;
