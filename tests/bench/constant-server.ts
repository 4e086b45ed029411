import { buildApp } from '#src/app.ts'
import { DEFAULTS } from '#src/config.ts'

/** The service with all that it has, and one path more, which answers a constant of so many bytes. */
const bytes = Number(process.env['ANSWER_BYTES'])
const constant = JSON.stringify({ constant: 'x'.repeat(Math.max(0, bytes - JSON.stringify({ constant: '' }).length)) })

const app = await buildApp({
  routes: [
    {
      prefix: '/bench',
      route: async (routes) => {
        routes.post('/constant', (_request, reply) => {
          reply.type('application/json').send(constant)
        })
      },
    },
  ],
})
process.on('SIGTERM', () => process.exit(0))
await app.listen({ host: DEFAULTS.host, port: Number(process.env['PORT']) })
