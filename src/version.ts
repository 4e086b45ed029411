/**
 * The version of the engine: it stands in the OpenAPI document and in every entity tag, so that a new engine never
 * confirms an answer that an older one computed. A test holds it to the version in `package.json`.
 */
export const VERSION = '0.1.0'
