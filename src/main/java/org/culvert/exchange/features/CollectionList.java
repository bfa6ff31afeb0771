package org.culvert.exchange.features;

import java.util.List;

/** The collections that the asker may see. */
public record CollectionList(List<WebLink> links, List<CollectionDescription> collections) {}
