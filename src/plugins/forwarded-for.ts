import type { FastifyInstance } from 'fastify'
import type { Config } from '#src/config.ts'
import { forwardedAddress } from '#src/http/ip-address.ts'

/**
 * Writes `X-Forwarded-For` anew with addresses alone. With its port each connection would count as a caller of its own, and
 * a proxy that is named in `TRUST_PROXY` would not be recognised in the list.
 */
export function readForwardedFor(app: FastifyInstance, { trustProxy }: Pick<Config, 'trustProxy'>): void {
  if (trustProxy === false) return
  app.addHook('onRequest', ({ raw: { headers } }, _reply, done) => {
    const given = headers['x-forwarded-for']
    if (typeof given === 'string')
      headers['x-forwarded-for'] = given
        .split(',')
        .map((entry) => forwardedAddress(entry.trim()))
        .join(', ')
    done()
  })
}
