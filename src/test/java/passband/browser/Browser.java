package passband.browser;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** Debian's chromium without a window; {@code .ci/run} installs it. */
final class Browser implements AutoCloseable {
  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  private final ChromeDriver driver;

  static {
    Logger.getLogger("org.openqa.selenium").setLevel(Level.SEVERE);
  }

  Browser(Path downloads, boolean scripts) {
    assertTrue(
        Files.exists(CHROMIUM) && Files.exists(DRIVER),
        "these tests need chromium and chromium-driver; .ci/run installs them");
    ChromeOptions options = new ChromeOptions();
    options.setBinary(CHROMIUM.toFile());
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--window-size=1000,1400");
    options.setExperimentalOption(
        "prefs",
        Map.of(
            "download.default_directory",
            downloads.toString(),
            "profile.managed_default_content_settings.javascript",
            scripts ? 1 : 2));
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    driver =
        new ChromeDriver(
            new ChromeDriverService.Builder()
                .usingDriverExecutable(DRIVER.toFile())
                .usingAnyFreePort()
                .withSilent(true)
                .build(),
            options);
  }

  ChromeDriver driver() {
    return driver;
  }

  void open(Path page) {
    driver.get(page.toUri().toString());
  }

  /** The page, begun for a new unit. */
  void open(Path page, String serial) {
    open(page);
    begin(serial);
  }

  /** A new unit, from the start of a page that is open. */
  void begin(String serial) {
    find("#serial").sendKeys(serial);
    find("#begin").click();
  }

  Object run(String script, Object... arguments) {
    return ((JavascriptExecutor) driver).executeScript(script, arguments);
  }

  /** What the open page has kept on this device, and its warning before it is left. */
  void forget() {
    run(
        "if (location.protocol === 'file:') localStorage.clear();"
            + " window.addEventListener('beforeunload', e => e.stopImmediatePropagation(), true)");
  }

  WebElement find(String css) {
    return driver.findElement(org.openqa.selenium.By.cssSelector(css));
  }

  List<WebElement> all(String css) {
    return driver.findElements(org.openqa.selenium.By.cssSelector(css));
  }

  /** What the page's console said that is no mere note. */
  List<String> complaints() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .filter(e -> e.getLevel().intValue() >= Level.WARNING.intValue())
        .map(e -> e.getMessage())
        .toList();
  }

  /** A file once it is there whole. */
  static Path awaited(Path file) throws IOException, InterruptedException {
    for (int i = 0; i < 200 && !(Files.exists(file) && Files.size(file) > 0); i++) {
      Thread.sleep(50);
    }
    assertTrue(Files.exists(file), "no " + file.getFileName());
    return file;
  }

  @Override
  public void close() {
    driver.quit();
  }
}
