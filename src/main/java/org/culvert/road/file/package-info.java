/**
 * Features of GeoJSON and of GeoPackages, whatever they are of, for the rooms that make records of them. It may use {@code geo}
 * and {@code platform}. Its invariant: a feature is given on WGS 84 or refused with its place in the file.
 */
@NullMarked
package org.culvert.road.file;

import org.jspecify.annotations.NullMarked;
