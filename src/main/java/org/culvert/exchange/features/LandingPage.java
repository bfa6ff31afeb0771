package org.culvert.exchange.features;

import java.util.List;

/** Where programs begin. */
public record LandingPage(String title, String description, List<WebLink> links) {}
