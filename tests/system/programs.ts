/**
 * Programs that read our drawings, show our page, or stand before or beside our replicas, none of them ours: how to find out
 * whether one is here, and the package of Debian that brings it.
 */
export const PROGRAMS = {
  pdftoppm: { found: ['pdftoppm', '-v'], package: 'poppler-utils' },
  pdftotext: { found: ['pdftotext', '-v'], package: 'poppler-utils' },
  zbarimg: { found: ['zbarimg', '--version'], package: 'zbar-tools' },
  qpdf: { found: ['qpdf', '--version'], package: 'qpdf' },
  // The system's own interpreter: another that comes first in the path does not see the system's packages.
  ezdxf: { found: ['/usr/bin/python3', '-c', 'import ezdxf'], package: 'python3-ezdxf' },
  python3: { found: ['python3', '--version'], package: 'python3' },
  curl: { found: ['curl', '--version'], package: 'curl' },
  chromium: { found: ['chromium', '--version'], package: 'chromium-headless-shell' },
  firefox: { found: ['firefox-esr', '--version'], package: 'firefox-esr' },
  webkit: { found: ['WebKitWebDriver', '--help'], package: 'webkit2gtk-driver' },
  xvfb: { found: ['Xvfb', '-help'], package: 'xvfb' },
  caddy: { found: ['caddy', 'version'], package: 'caddy' },
  haproxy: { found: ['haproxy', '-v'], package: 'haproxy' },
  'redis-server': { found: ['redis-server', '-v'], package: 'redis-server' },
  // An engine that runs, and not its command alone; no package brings one that can run everywhere.
  docker: { found: ['docker', 'info'], package: 'docker.io' },
  openssl: { found: ['openssl', 'version'], package: 'openssl' },
} as const satisfies Readonly<
  Record<string, { readonly found: readonly [string, ...string[]]; readonly package: string }>
>

export type Program = keyof typeof PROGRAMS

/** Servers lie where only the system's own users look by themselves. */
export const SYSTEM_ENVIRONMENT = { ...process.env, PATH: `${process.env['PATH'] ?? ''}:/usr/local/sbin:/usr/sbin` }
