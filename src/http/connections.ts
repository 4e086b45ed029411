import type { IncomingMessage, ServerResponse } from 'node:http'
import { Server, type Socket } from 'node:net'

/** Node's own fields of a connection: the answer whose turn it is, and the request that is being read or was read last. */
type Connection = Socket & {
  readonly _httpMessage?: ServerResponse | null
  readonly parser?: { readonly incoming: IncomingMessage | null; onIncoming: (() => number) | null } | null
}

/** How many connections may be open at the same time. */
export type ConnectionLimits = {
  readonly most: number
  /** From one caller; 0 sets no such limit. */
  readonly mostPerCaller: number
  /** Whose connection it is, by the address of its peer; undefined where that tells nothing, as with a proxy. */
  readonly callerOf: (address: string) => string | undefined
}

/** The open connections of one or more servers. */
export type Connections = {
  /** Holds the connections of a server to the limits from now on. */
  watch(server: Server): void
  /** How many there are. */
  open(): number
  /** How many connections and requests have arrived since the start. */
  arrivals(): number
  /** Accepts no further connections. Fulfilled when the last open one has ended. */
  stopListening(): Promise<void>
  /** Closes what is idle, and from now on whatever falls idle. */
  closeIdle(): void
  /** Ends, with a last answer, connections on which a request has begun to arrive whose headers are incomplete. */
  endUnread(lastAnswer: string): void
}

/** Connections that are counted together, and those of them that are idle, in the order in which they fell idle. */
type Account = { readonly open: Set<Socket>; readonly idle: Set<Socket> }

type Group = Account & { arrivals: number; isClosing: boolean }

type Entry = {
  readonly group: Group
  /** The caller's account; undefined where callers are not told apart. */
  readonly caller: Account | undefined
  /** Bytes read when it fell idle: more than that is the beginning of a request. */
  bytesWhenIdle: number
}

/** By connection, for whoever sees only the request: a connection of an unwatched server is not in it. */
const entries = new WeakMap<Socket, Entry>()

/**
 * Keeps account of open connections. At a limit, a new connection takes the place of the one that has been idle longest
 * (of the same caller, at the limit of a caller), so idle connections never lock anyone out. Only where every connection
 * has a request under way is the new one closed.
 */
export function openConnections({ most, mostPerCaller, callerOf }: ConnectionLimits): Connections {
  const group: Group = { open: new Set(), idle: new Set(), arrivals: 0, isClosing: false }
  const callers = new Map<string, Account>()
  const servers: Server[] = []

  const nameOf = (socket: Socket): string | undefined =>
    mostPerCaller === 0 || socket.remoteAddress === undefined ? undefined : callerOf(socket.remoteAddress)

  const admit = (socket: Socket): void => {
    group.arrivals += 1
    const name = nameOf(socket)
    const caller = name === undefined ? undefined : (callers.get(name) ?? { open: new Set(), idle: new Set() })
    const hasRoom =
      (caller === undefined || caller.open.size < mostPerCaller || closeLongestIdle(caller.idle)) &&
      (group.open.size < most || closeLongestIdle(group.idle))
    if (!hasRoom) {
      socket.destroy()
      return
    }
    entries.set(socket, { group, caller, bytesWhenIdle: 0 })
    for (const { open, idle } of accountsOf(group, caller)) {
      open.add(socket)
      idle.add(socket)
    }
    if (name !== undefined && caller !== undefined) callers.set(name, caller)
    socket.once('close', () => {
      forget(socket)
      if (name !== undefined && caller?.open.size === 0 && callers.get(name) === caller) callers.delete(name)
    })
  }

  return {
    watch(server) {
      servers.push(server)
      server.on('connection', admit)
      server.on('timeout', cutSilent)
    },
    open: () => group.open.size,
    arrivals: () => group.arrivals,
    async stopListening() {
      // Not the method of the HTTP server: it closes idle connections at once and stops its time limits.
      const close = (server: Server) =>
        new Promise<void>((resolve) => Server.prototype.close.call(server, () => resolve()))
      await Promise.all(servers.map(close))
    },
    closeIdle() {
      group.isClosing = true
      for (const socket of [...group.idle]) if (isSilent(socket)) socket.destroySoon()
    },
    endUnread(lastAnswer) {
      for (const socket of [...group.idle]) {
        if (isSilent(socket)) socket.destroySoon()
        else endConnection(socket, lastAnswer)
      }
    },
  }
}

/** A request has arrived on the connection. */
export function markBusy(socket: Socket): void {
  const entry = entries.get(socket)
  if (entry === undefined) return
  entry.group.arrivals += 1
  for (const { idle } of accountsOf(entry.group, entry.caller)) idle.delete(socket)
}

/** Every request that arrived on the connection has been answered. */
export function markIdle(socket: Socket): void {
  const entry = entries.get(socket)
  if (entry === undefined || socket.destroyed) return
  entry.bytesWhenIdle = socket.bytesRead
  for (const { idle } of accountsOf(entry.group, entry.caller)) idle.add(socket)
  if (entry.group.isClosing) socket.destroySoon()
}

const accountsOf = (group: Group, caller: Account | undefined): readonly Account[] =>
  caller === undefined ? [group] : [group, caller]

function closeLongestIdle(idle: Set<Socket>): boolean {
  const [longest] = idle
  if (longest === undefined) return false
  forget(longest)
  longest.destroy()
  return true
}

function forget(socket: Socket): void {
  const entry = entries.get(socket)
  if (entry === undefined) return
  entries.delete(socket)
  for (const { open, idle } of accountsOf(entry.group, entry.caller)) {
    open.delete(socket)
    idle.delete(socket)
  }
}

/** Whether no part of a request has come in on an idle connection. */
const isSilent = (socket: Socket): boolean => entries.get(socket)?.bytesWhenIdle === socket.bytesRead

/**
 * Cuts a connection on which nothing has moved for as long as it may be idle, unless it is this service that is awaited:
 * an answer can take longer to work out than a connection may be idle.
 */
function cutSilent(connection: Connection): void {
  if (connection._httpMessage?.headersSent !== false) connection.destroy()
}

/** Tells the parser to read a request like any other. */
const READ_ON = 0

/**
 * Cuts a connection on which too much has been sent. Node reads the packet to its end all the same: thousands of requests can
 * be in it, and for each it would make an error with a stack.
 */
export function cutFlooded(connection: Connection): void {
  if (connection.parser) connection.parser.onIncoming = () => READ_ON
  connection.destroy()
}

/**
 * Ends a connection on which nothing more can be read, with a last answer to what was being read there; without it where
 * it would be taken for another's: that has been answered before its body was there, or an answer has begun. An earlier
 * request that still waits for its answer gets it, and the connection closes with that.
 */
export function endConnection(connection: Connection, lastAnswer: string): void {
  const { _httpMessage: answer, parser } = connection
  const request = parser?.incoming ?? undefined
  const isInBody = request?.complete === false
  const isAwaited = answer?.headersSent === false
  if (isAwaited && !(isInBody && answer.req === request)) {
    answer.shouldKeepAlive = false
    return
  }
  if (connection.writable && (isAwaited || (!answer && !isInBody))) connection.write(lastAnswer)
  connection.destroy()
}
