package org.culvert.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * Debian's Chromium, without a screen, at the server of the test run: its shell for that, where it is installed, which starts
 * and changes its size in a tenth of the time, or else the whole program.
 */
public final class Browser implements AutoCloseable {
    /** A telephone, a tablet, a desk. */
    private static final List<Integer> WIDTHS = List.of(320, 768, 1440);

    /** The narrowest and the widest: it is the slowest of what is looked at. */
    private static final List<Integer> WIDTHS_OF_RULES = List.of(320, 1440);

    private static final String WATCH = """
            window.violations = [];
            document.addEventListener('securitypolicyviolation', function (violation) {
              window.violations.push(violation.violatedDirective + ' ' + violation.blockedURI + ' ' + violation.sample);
            });
            window.alert = function () { window.pwned = 'alert'; };
            """;

    /** Fields that no label names, identifiers that stand twice, headings of the first rank, language and title. */
    private static final String FLAWS = """
            const flaws = [];
            document.querySelectorAll('input:not([type=hidden]), select, textarea').forEach(function (field) {
              const named = field.getAttribute('aria-label') || Array.from(field.labels).some(l => l.textContent.trim());
              if (!named) { flaws.push('no label: ' + field.outerHTML); }
            });
            document.querySelectorAll('button').forEach(function (button) {
              if (!(button.getAttribute('aria-label') || button.textContent.trim())) { flaws.push('no name: ' + button.outerHTML); }
            });
            const ids = Array.from(document.querySelectorAll('[id]')).map(e => e.id);
            ids.filter((id, at) => ids.indexOf(id) !== at).forEach(id => flaws.push('twice: ' + id));
            if (document.querySelectorAll('h1').length !== 1) { flaws.push('not one h1'); }
            if (!document.documentElement.lang) { flaws.push('no language'); }
            if (!document.title.trim()) { flaws.push('no title'); }
            return flaws;
            """;

    /** Rules of WCAG 2.2 AA, by axe-core; those of colours need the page as it is seen. */
    private static final String RULES = """
            const done = arguments[arguments.length - 1];
            axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'], resultTypes: ['violations']}).then(function (found) {
              done(found.violations.map(v => v.id + ': ' + v.nodes.map(n => n.target.join(' ') + ' ' + n.failureSummary).join(' | ')));
            }, function (failed) { done(['axe failed: ' + failed]); });
            """;

    private static final String AXE = axe();

    private static final Path WHOLE = Path.of("/usr/bin/chromium");

    private static final Path SHELL = Path.of("/usr/bin/chromium-headless-shell");

    private final ChromeDriver driver;
    private final String server;
    private final WebDriverWait patience;

    private Browser(ChromeDriver driver, String server) {
        this.driver = driver;
        this.server = server;
        this.patience = new WebDriverWait(driver, Duration.ofSeconds(60));
        // What is looked at may go with its page in the middle of a look
        this.patience.ignoring(StaleElementReferenceException.class);
    }

    /** Starts one that has never been anywhere. */
    public static Browser start(Path profile) {
        return start(profile, Request.server());
    }

    /**
     * Starts one.
     *
     * @param profile what it remembers of earlier starts
     * @param server where the pages are that it opens, without a slash at its end
     */
    public static Browser start(Path profile, String server) {
        return launch(server, options(profile));
    }

    /** Starts one that runs no scripts of pages: the whole program, since its shell has no such preference. */
    public static Browser startWithoutScripts(Path profile) {
        ChromeOptions options = options(profile).setBinary(WHOLE.toFile());
        options.setExperimentalOption("prefs", Map.of("profile.managed_default_content_settings.javascript", 2));
        return launch(Request.server(), options);
    }

    private static ChromeOptions options(Path profile) {
        return new ChromeOptions()
                .setBinary(program(profile).toFile())
                .addArguments(
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--disable-quic",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--user-data-dir=" + profile);
    }

    /** The shell opens no page by itself, and its driver waits for one. */
    private static Path program(Path profile) {
        if (!Files.isExecutable(SHELL)) {
            return WHOLE;
        }
        try {
            Path program = Files.createTempFile(profile.getParent(), "browser", ".sh");
            Files.writeString(program, "#!/bin/sh\nexec " + SHELL + " \"$@\" about:blank\n");
            Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwx------"));
            return program;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Browser launch(String server, ChromeOptions options) {
        ChromeDriver driver = new ChromeDriver(
                new ChromeDriverService.Builder().usingAnyFreePort().build(), options);
        driver.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", WATCH));
        driver.manage().window().setSize(new Dimension(1440, 900));
        driver.manage().timeouts().scriptTimeout(Duration.ofSeconds(60));
        return new Browser(driver, server);
    }

    /** Closes the page that is open, and has an empty one instead. */
    public void closePage() {
        String page = driver.getWindowHandle();
        String empty = driver.switchTo().newWindow(WindowType.TAB).getWindowHandle();
        driver.switchTo().window(page).close();
        driver.switchTo().window(empty);
        driver.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", WATCH));
        driver.manage().window().setSize(new Dimension(1440, 900));
    }

    /** Path and query of the page that is shown, of a page without scripts too. */
    public String address() {
        String address = Objects.requireNonNull(driver.getCurrentUrl(), "no page is open");
        return address.startsWith(server) ? address.substring(server.length()) : address;
    }

    public void resize(int width, int height) {
        driver.manage().window().setSize(new Dimension(width, height));
    }

    public void open(String path) {
        driver.get(server + path);
    }

    /** Path and query of the page that is shown. */
    public String path() {
        return String.valueOf(script("return location.pathname + location.search;"));
    }

    public WebElement find(String css) {
        return driver.findElement(By.cssSelector(css));
    }

    public List<WebElement> list(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    public String text(String css) {
        return find(css).getText();
    }

    /** Everything that the page says: its text, and what stands in its fields. */
    public String words() {
        return String.valueOf(script("return document.documentElement.textContent + Array.from("
                + "document.querySelectorAll('input, textarea')).map(field => field.value).join('\\n');"));
    }

    public void fill(String css, String text) {
        WebElement field = find(css);
        field.clear();
        field.sendKeys(text);
    }

    /** Presses what leads to another page, and waits until that is there. */
    public void press(String css) {
        script("window.leaving = true; return true;");
        find(css).click();
        patience.until(page -> Boolean.TRUE.equals(
                driver.executeScript("return !window.leaving && document.readyState === 'complete';")));
    }

    public void await(String what, java.util.function.BooleanSupplier there) {
        patience.withMessage(what).until(page -> there.getAsBoolean());
    }

    public Object script(String script, Object... arguments) {
        return Objects.requireNonNull(driver.executeScript(script, arguments), "the script gave nothing");
    }

    /** A script that is run for what it does. */
    public void run(String script, Object... arguments) {
        driver.executeScript(script, arguments);
    }

    /** Octets that came over the line for the page that is shown, and for what belongs to it. */
    public long weight() {
        return ((Number) script("""
                        return performance.getEntriesByType('navigation').concat(performance.getEntriesByType('resource'))
                            .reduce((sum, one) => sum + one.transferSize, 0);
                        """)).longValue();
    }

    public WebElement focused() {
        return driver.switchTo().activeElement();
    }

    /** That nothing was executed that was stored as a text, and nothing of ours breaks our own policy. */
    public void assertNothingRan() {
        assertThat(driver.executeScript("return typeof window.pwned;"))
                .as("at " + path())
                .isEqualTo("undefined");
        assertThat(driver.executeScript("return window.violations;"))
                .as("breaches of the policy at " + path())
                .isEqualTo(List.of());
        assertThat(list("img[src='x'], [onerror], [onfocus], script:not([src])"))
                .as("markup out of texts at " + path())
                .isEmpty();
    }

    /** That a person can use the page, on a telephone too; leaves pictures of it under {@code target/screens}. */
    public void assertUsable(String name) {
        assertThat(driver.executeScript(FLAWS)).as("flaws of " + name).isEqualTo(List.of());
        Dimension before = driver.manage().window().getSize();
        driver.executeScript(AXE);
        for (int width : WIDTHS) {
            driver.manage().window().setSize(new Dimension(width, 900));
            if (WIDTHS_OF_RULES.contains(width)) {
                assertThat(driver.executeAsyncScript(RULES))
                        .as("WCAG 2.2 AA, " + name + " at " + width + " px")
                        .isEqualTo(List.of());
            }
            long overflow = ((Number) script(
                            "return document.documentElement.scrollWidth - document.documentElement.clientWidth;"))
                    .longValue();
            picture(name + "-" + width);
            assertThat(overflow)
                    .as(name + " scrolls sideways at " + width + " px")
                    .isZero();
        }
        driver.manage().window().setSize(before);
    }

    private static String axe() {
        try (InputStream script = Browser.class.getResourceAsStream("/axe.min.js")) {
            return new String(Objects.requireNonNull(script, "axe-core").readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void picture(String name) {
        try {
            Path picture = Path.of("target", "screens", name + ".png");
            Files.createDirectories(picture.getParent());
            Map<String, Object> whole =
                    driver.executeCdpCommand("Page.captureScreenshot", Map.of("captureBeyondViewport", true));
            Files.write(picture, Base64.getDecoder().decode((String) whole.get("data")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        driver.quit();
    }
}
