package org.culvert.platform.database;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.platform.engine.support.descriptor.ClassSource;
import org.junit.platform.launcher.LauncherSession;
import org.junit.platform.launcher.LauncherSessionListener;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.TestPlan;

/**
 * Gives every {@link QuarkusTest} of a test session the real PostgreSQL, with one empty database: the server's own, in a
 * folder under {@code target}, or the one of {@code CULVERT_TEST_DATABASE_URL} (with {@code CULVERT_TEST_DATABASE_USER}
 * and {@code CULVERT_TEST_DATABASE_PASSWORD}, and those of {@code CULVERT_TEST_MIGRATOR_USER}), which must be empty.
 */
public final class TestDatabase implements LauncherSessionListener {
    private static final String DATABASE = "culvert_test";
    private static final int MOST_PROCESSES = 4;

    /** A property, since the tests of the running server see this class by another class loader. */
    private static final String HOME = "culvert.test.home";

    private @Nullable OwnPostgres own;
    private boolean ready;

    @Override
    public void launcherSessionOpened(LauncherSession session) {
        session.getLauncher().registerTestExecutionListeners(new TestExecutionListener() {
            @Override
            public void testPlanExecutionStarted(TestPlan plan) {
                if (!ready && plan.countTestIdentifiers(TestDatabase::needsServer) > 0) {
                    prepare();
                    ready = true;
                }
            }
        });
    }

    private static boolean needsServer(TestIdentifier test) {
        return test.getSource()
                .filter(ClassSource.class::isInstance)
                .map(source -> ((ClassSource) source).getJavaClass())
                .map(TestDatabase::isQuarkusTest)
                .orElse(false);
    }

    /** By name: the class may have been loaded by the framework's own class loader, with an annotation of its own. */
    private static boolean isQuarkusTest(Class<?> type) {
        for (var annotation : type.getAnnotations()) {
            if (annotation.annotationType().getName().equals(QuarkusTest.class.getName())) {
                return true;
            }
        }
        return false;
    }

    /** The folder of the server under test. */
    public static Path home() {
        return Path.of(System.getProperty(HOME, "target/test-home"));
    }

    /** In the first folder that no other process has: tests may run in several at the same time. */
    private static OwnPostgres startOwn() {
        for (int process = 1; ; process++) {
            Path home = Path.of("target", "test-home-" + process);
            try {
                OwnPostgres started = OwnPostgres.start(UnpackedPostgres.into(home));
                System.setProperty(HOME, home.toString());
                System.setProperty("culvert.erasures", home.resolve("erasures").toString());
                return started;
            } catch (CannotStartException e) {
                if (process == MOST_PROCESSES) {
                    throw e;
                }
            }
        }
    }

    private void prepare() {
        Map<String, String> environment = System.getenv();
        if (environment.containsKey("CULVERT_TEST_DATABASE_URL")) {
            DatabaseAccess access = ConfiguredDatabase.read(Map.of(
                    "CULVERT_DATABASE_URL", environment.get("CULVERT_TEST_DATABASE_URL"),
                    "CULVERT_DATABASE_USER", environment.getOrDefault("CULVERT_TEST_DATABASE_USER", ""),
                    "CULVERT_DATABASE_PASSWORD", environment.getOrDefault("CULVERT_TEST_DATABASE_PASSWORD", ""),
                    "CULVERT_MIGRATOR_USER", environment.getOrDefault("CULVERT_TEST_MIGRATOR_USER", ""),
                    "CULVERT_MIGRATOR_PASSWORD", environment.getOrDefault("CULVERT_TEST_MIGRATOR_PASSWORD", "")));
            ConfiguredDatabase.check(access);
            access.publish();
            return;
        }
        OwnPostgres postgres = startOwn();
        own = postgres;
        try {
            postgres.layAnew(DATABASE);
            letCommitsBeLost(postgres.accessTo(DATABASE));
        } catch (SQLException e) {
            throw new IllegalStateException("No empty database for the tests", e);
        }
        postgres.accessTo(DATABASE).publish();
    }

    /** Nothing of it is to outlive a power cut; that the server's own database does is asked for in ServerLifeIT. */
    private static void letCommitsBeLost(DatabaseAccess access) throws SQLException {
        try (Connection owner = access.connectAsOwner("culvert test")) {
            Jdbc.execute(owner, "ALTER DATABASE " + DATABASE + " SET synchronous_commit = off");
        }
    }

    @Override
    public void launcherSessionClosed(LauncherSession session) {
        if (own != null) {
            own.stop();
        }
    }
}
