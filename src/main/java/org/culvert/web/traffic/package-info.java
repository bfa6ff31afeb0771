/** Pages about how many vehicles go on which road. */
@org.jspecify.annotations.NullMarked
package org.culvert.web.traffic;
