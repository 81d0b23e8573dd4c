// What a fresh clone needs before any command runs: a Node new enough, the packages of the lock file and, for the
// tests, a Chromium. Every npm command calls this file first; it is plain JavaScript without imports from packages,
// since it runs before there are any. Where nothing is missing it says nothing. It writes to standard error alone,
// because what `npm run --silent dibble` prints on standard output is read by other programs.

import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { accessSync, constants, existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const packages = join(root, 'node_modules');
const stampFile = join(packages, '.dibble-set-up');

/** Whether this Node, '20.19.0' say, can run Dibble's tools: 20.19 or newer in 20, 22.12 or newer in 22, 24 and on. */
export function nodeIsNewEnough(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major === 20) return minor >= 19;
  if (major === 22) return minor >= 12;
  return major >= 24;
}

/** Installs the lock file's packages where they are absent or of another lock file. */
export function setUpPackages() {
  if (!nodeIsNewEnough(process.versions.node)) {
    stop(
      `Dibble needs Node 20.19 or newer (of 22: 22.12 or newer) and this is Node ${process.versions.node}: ` +
        'install a newer Node from nodejs.org and run the same command again.',
    );
  }
  const lock = readFileSync(join(root, 'package-lock.json'), 'utf8');
  const stamp = createHash('sha256').update(lock).digest('hex');
  if (textOf(stampFile) === stamp) return;
  if (!installedMatches(lock)) {
    say('Installing the packages that Dibble needs (once, and after an update) ...');
    const install = ['ci', '--include=dev', '--include=optional', '--no-audit', '--no-fund', '--loglevel=error'];
    if (!succeeds(...npm(install))) {
      stop(
        'The packages could not be installed: see the lines above, check the network, and run the same command again.',
      );
    }
  }
  writeFileSync(stampFile, stamp);
}

/** The Chromium of this machine: CHROMIUM_PATH where it is set, else the first that is found. */
export function chromiumPath() {
  return chosenOr(() =>
    firstProgram([
      ...named('chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome.exe'),
      '/Applications/Chromium.app/Contents/MacOS/Chromium',
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
      join(process.env.PROGRAMFILES ?? 'C:\\Program Files', 'Google', 'Chrome', 'Application', 'chrome.exe'),
    ]),
  );
}

/**
 * What shows the pages of most browser tests: Debian's headless shell where there is one, which is Chromium without windows, settings and
 * profiles of its own and takes a tenth less of the machine; else the machine's Chromium.
 */
export function headlessChromiumPath() {
  return chosenOr(() => firstProgram(named('chromium-headless-shell'))) ?? chromiumPath();
}

function chosenOr(found) {
  const chosen = process.env.CHROMIUM_PATH;
  if (chosen === undefined || chosen === '') return found();
  return isProgram(chosen) ? chosen : undefined;
}

function firstProgram(places) {
  return places.find(isProgram);
}

/** Where programs of these names may stand. */
function named(...names) {
  const folders = ['/usr/bin', ...(process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '')];
  return folders.flatMap((folder) => names.map((name) => join(folder, name)));
}

/** Makes sure that there is a Chromium for the browser tests, from Debian's packages where that can be done. */
export function setUpBrowser() {
  if (chromiumPath() !== undefined) return;
  const advice =
    "The browser tests need Chromium: install it with your system's package manager, or set CHROMIUM_PATH to a Chromium or Chrome program, and run the same command again.";
  const asRoot = rootPrefix();
  if (process.env.CHROMIUM_PATH || asRoot === undefined || !onPath('apt-get')) stop(advice);
  say('Installing Chromium for the browser tests (once) ...');
  const apt = (...args) => {
    const [program, ...rest] = [
      ...asRoot,
      'env',
      'DEBIAN_FRONTEND=noninteractive',
      'apt-get',
      '-qq',
      '-o',
      'Acquire::Retries=3',
    ];
    return succeeds(program, [...rest, ...args]);
  };
  // An update that fails in part may still leave a list good enough to install from.
  apt('update');
  const install = (...wanted) => apt('install', '-y', '--no-install-recommends', ...wanted);
  // Not every release has the shell as a package of its own.
  const installed = install('chromium', 'chromium-headless-shell') || install('chromium');
  if (!installed || chromiumPath() === undefined) stop(advice);
}

/** True where every package that the lock file asks for stands in node_modules in that version, as npm recorded it. */
function installedMatches(lock) {
  const record = textOf(join(packages, '.package-lock.json'));
  if (record === undefined) return false;
  const installed = JSON.parse(record).packages;
  return Object.entries(JSON.parse(lock).packages).every(
    ([path, wanted]) => path === '' || wanted.optional === true || installed[path]?.version === wanted.version,
  );
}

/** The npm that started this command, or the one on PATH. */
function npm(args) {
  const running = process.env.npm_execpath;
  if (running?.endsWith('.js')) return [process.execPath, [running, ...args]];
  return process.platform === 'win32' ? ['cmd', ['/c', 'npm', ...args]] : ['npm', args];
}

/** What to put before a command so that it runs as root: nothing, sudo where it asks for no password, or no way. */
function rootPrefix() {
  if (process.getuid?.() === 0) return [];
  const sudo = spawnSync('sudo', ['-n', 'true'], { stdio: 'ignore' });
  return sudo.status === 0 ? ['sudo', '-n'] : undefined;
}

function succeeds(program, args) {
  // Both streams of the child go to standard error.
  return spawnSync(program, args, { cwd: root, stdio: ['ignore', 2, 2] }).status === 0;
}

function onPath(name) {
  return (process.env.PATH ?? '').split(delimiter).some((folder) => isProgram(join(folder, name)));
}

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

function textOf(path) {
  return existsSync(path) ? readFileSync(path, 'utf8') : undefined;
}

function say(sentence) {
  process.stderr.write(`${sentence}\n`);
}

function stop(sentence) {
  say(sentence);
  process.exit(1);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  setUpPackages();
  if (process.argv.includes('--with-browser')) setUpBrowser();
}
