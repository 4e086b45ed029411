type Host = { readonly host: string; readonly port: number }

/** Who asks: nobody by name, whoever knows the password, or a user with a password. */
type StoreLogin = { readonly username?: string; readonly password?: string }

/** Servers that speak RESP, the protocol of Redis and Valkey, and how to reach the one that holds a key. */
export type StoreAddress = {
  readonly hosts: readonly Host[]
  readonly login: StoreLogin
  /** Whether connections use TLS. */
  readonly isEncrypted: boolean
} & (
  | { readonly kind: 'server' }
  | { readonly kind: 'cluster' }
  /** The hosts are sentinels, which know where the primary of this name is. */
  | { readonly kind: 'sentinel'; readonly primary: string }
)

const SERVER_PORT = 6379
const SENTINEL_PORT = 26_379

const FORM =
  /^redis(?<tls>s?)(?:\+(?<kind>cluster|sentinel))?:\/\/(?:(?<user>[^:@/]*):(?<password>[^:@/]+)@)?(?<hosts>[^@/?#]+)(?:\/(?<primary>[\w.-]*))?$/

/**
 * Reads the address of a store: `redis://HOST`, `redis+cluster://HOST,HOST`, or `redis+sentinel://HOST,HOST/PRIMARY`. A host
 * may have a port, a login stands before the hosts as `USER:PASSWORD@` or `:PASSWORD@`, percent-encoded where needed, and
 * `rediss` instead of `redis` asks for TLS.
 *
 * @returns undefined for anything else
 */
export function storeAddress(text: string): StoreAddress | undefined {
  const {
    tls,
    kind = 'server',
    user = '',
    password = '',
    hosts: list = '',
    primary = '',
  } = FORM.exec(text)?.groups ?? {}
  const port = kind === 'sentinel' ? SENTINEL_PORT : SERVER_PORT
  const hosts = list.split(',').map((each) => hostOf(each, port))
  const login = { username: decoded(user), password: decoded(password) }
  if (!hosts.every((each) => each !== undefined)) return undefined
  if (login.username === undefined || login.password === undefined) return undefined
  const reached = { hosts, isEncrypted: tls === 's', login: known(login.username, login.password) }
  if (kind === 'sentinel') return primary === '' ? undefined : { kind, primary, ...reached }
  if (primary !== '' || (kind === 'server' && hosts.length > 1)) return undefined
  return { kind: kind === 'cluster' ? kind : 'server', ...reached }
}

function hostOf(text: string, port: number): Host | undefined {
  const url = URL.parse(`redis://${text}`)
  if (url === null || url.hostname === '' || url.port === '0') return undefined
  return {
    host: url.hostname.replace(/^\[|\]$/g, ''), // the brackets of an IPv6 address
    port: url.port === '' ? port : Number(url.port),
  }
}

function decoded(text: string): string | undefined {
  try {
    return decodeURIComponent(text)
  } catch {
    return undefined
  }
}

const known = (username: string, password: string): StoreLogin => ({
  ...(username !== '' && { username }),
  ...(password !== '' && { password }),
})
