import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { referenceRoute } from '#src/http/computing-route.ts'
import { refTo } from '#src/http/schema.ts'
import { toStockSizesResponse } from './present.ts'
import { StockSize, StockSizesRequest, StockSizesResponse } from './schema.ts'

export const STOCK_SIZES_SCHEMAS = [StockSize, StockSizesResponse]

export const stockSizesRoute: FastifyPluginAsyncTypebox = async (app) => {
  referenceRoute(app, {
    path: '/stock-sizes',
    schema: {
      operationId: 'stockSizes',
      tags: ['reference'],
      summary: 'Sizes of lumber: nominal, rough and dressed',
      description:
        'How thick and how wide is lumber really? You get the nominal, rough and dressed sizes of softwood and hardwood, cut in inches and in millimetres; parameters narrow the list. Each row names its source.',
      body: StockSizesRequest,
      response: { 200: refTo<typeof StockSizesResponse>('StockSizesResponse') },
    },
    handler: toStockSizesResponse,
  })
}
