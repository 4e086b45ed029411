/** The version that the OpenAPI document names. A test holds it to the version in `package.json`. */
export const VERSION = '0.1.0'
