package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** The first page. */
@MessageBundle("start")
public interface StartWords {
    @Message("A region yet to be named")
    String noRegion();

    @Message("Culvert follows a struck animal from the call to the day it goes back, and tells the road's "
            + "owner from the same records which stretch kills which animals in which season.")
    String job();

    @Message("Your work waits here:")
    String workWaits();

    @Message("{#switch key}{#case 'now'}Now{#case 'papers'}For the authority{#case "
            + "'animals'}Animals{#case 'roads'}Roads{#case 'network'}The network{#case}For "
            + "programs{/switch}")
    String group(Object key);
}
