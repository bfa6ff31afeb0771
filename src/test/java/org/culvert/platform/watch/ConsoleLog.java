package org.culvert.platform.watch;

import io.quarkus.bootstrap.logging.InitialConfigurator;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.jboss.logmanager.ExtLogRecord;
import org.jboss.logmanager.handlers.ConsoleHandler;

/** What the running server writes to its console, line by line: through the filter and the format that stand before it. */
public final class ConsoleLog extends Handler implements AutoCloseable {
    private final List<String> lines = new CopyOnWriteArrayList<>();
    private final Handler console;

    private ConsoleLog(Handler console) {
        this.console = console;
    }

    public static ConsoleLog listen() {
        Handler console = Arrays.stream(InitialConfigurator.DELAYED_HANDLER.getHandlers())
                .filter(ConsoleHandler.class::isInstance)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the server has no console"));
        var log = new ConsoleLog(console);
        Logger.getLogger("").addHandler(log);
        return log;
    }

    public List<String> lines() {
        return lines;
    }

    @Override
    public void publish(LogRecord entry) {
        // As the console is asked, which may be before or after us.
        LogRecord own = entry instanceof ExtLogRecord extended ? new ExtLogRecord(extended) : entry;
        if (console.isLoggable(own)) {
            lines.add(console.getFormatter().format(own));
        }
    }

    @Override
    public void flush() {}

    @Override
    public void close() {
        Logger.getLogger("").removeHandler(this);
    }
}
