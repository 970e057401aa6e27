// Starts Passband's language server, which the extension carries, and hands VS Code's questions on to it.
const path = require("path");
const fs = require("fs");
const { commands, window, workspace } = require("vscode");
const { LanguageClient } = require("vscode-languageclient/node");

let client;

/** The program to start and what it is given. */
function program(context) {
  const settings = workspace.getConfiguration("passband");
  const command = settings.get("command").trim();
  if (command) {
    // Windows starts a batch file only through its shell.
    const shell = process.platform === "win32" && /\.(cmd|bat)$/i.test(command);
    return shell
      ? { command: `"${command}"`, args: ["server"], options: { shell: true } }
      : { command, args: ["server"] };
  }
  const jar = context.asAbsolutePath(path.join("server", "passband-start.jar"));
  return { command: java(settings.get("java").trim()), args: ["-XX:+UseSerialGC", "-jar", jar, "server"] };
}

function java(chosen) {
  if (chosen) {
    return chosen;
  }
  const name = process.platform === "win32" ? "java.exe" : "java";
  const home = process.env.JAVA_HOME ? path.join(process.env.JAVA_HOME, "bin", name) : "";
  return home && fs.existsSync(home) ? home : name;
}

async function start(context) {
  const server = program(context);
  client = new LanguageClient("passband", "Passband", server, {
    documentSelector: [
      { scheme: "file", language: "passband" },
      { scheme: "untitled", language: "passband" },
    ],
  });
  try {
    await client.start();
  } catch (error) {
    const settings = "Open Settings";
    const answer = await window.showErrorMessage(
      `Passband's language server did not start with '${server.command}'. It needs Java 17 or later: install it, or name one in the setting 'passband.java'. (${error.message})`,
      settings,
    );
    if (answer === settings) {
      await commands.executeCommand("workbench.action.openSettings", "passband");
    }
  }
}

async function stop() {
  const old = client;
  client = undefined;
  if (old && old.isRunning()) {
    await old.stop();
  }
}

async function activate(context) {
  const restart = async () => {
    await stop();
    await start(context);
  };
  context.subscriptions.push(
    commands.registerCommand("passband.restart", restart),
    workspace.onDidChangeConfiguration((change) => change.affectsConfiguration("passband") && restart()),
  );
  await start(context);
}

module.exports = { activate, deactivate: stop };
