/**
 * Templates of aftercare plans, as data.
 *
 * <p>Uses {@code taxon} and below, and {@code care.schedule}. Its one invariant: no plan comes of a template that no vet has
 * adopted as it stands.
 */
@NullMarked
package org.culvert.care.template;

import org.jspecify.annotations.NullMarked;
