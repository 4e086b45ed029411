import { join } from 'node:path'
import { sourceHash } from './source-hash.ts'

/** In the bundle this name is replaced by the hash of the sources that it was made from. */
declare const ENGINE_OF_BUNDLE: string | undefined

/**
 * Which build answers. It stands in every entity tag, so that a build never confirms an answer that another one computed,
 * and addresses may name it (`engine=`). The service from its sources and the bundle made of them have the same.
 */
export const ENGINE: string =
  typeof ENGINE_OF_BUNDLE === 'string' ? ENGINE_OF_BUNDLE : sourceHash(join(import.meta.dirname, '..'))
