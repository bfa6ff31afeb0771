/** Old records by forms: a file brought, decided how to be read, tried, and taken in. */
@NullMarked
package org.culvert.web.records;

import org.jspecify.annotations.NullMarked;
