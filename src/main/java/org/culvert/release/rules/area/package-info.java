/**
 * Where an animal may go, as an area on the map: what the rules and the maps entered here do not rule out. Overlays by JTS on a
 * plane laid around the animal's origin; distances and the circle of a rule are geodesic.
 */
@NullMarked
package org.culvert.release.rules.area;

import org.jspecify.annotations.NullMarked;
