/**
 * Layers for GIS programs by OGC API - Features 1.0.1 (OGC 17-069r4): road links, works, hotspots, collisions, incidents.
 *
 * <p>It may use every room below, and is used by nobody: the room of pages draws its answers without knowing its classes.
 *
 * <p>Its one invariant: what a collection answers, counts and filters by is what the table of who sees what tells the asker.
 */
@NullMarked
package org.culvert.exchange.features;

import org.jspecify.annotations.NullMarked;
