import 'server-only'
import { CALCULATION_VERSION } from '#lib/core/result'
import { paths } from './openapi/paths'
import { jsonSchemas } from './openapi/schemas'

/** The description of the API (OpenAPI 3.1), made from the schemas that the routes themselves read with. */
export function openApi() {
  return {
    openapi: '3.1.1',
    info: {
      title: 'Mouldwright',
      version: '1',
      description:
        'The working book of a shop that builds composite parts in its own moulds. Numbers carry their unit in the name: mm, degC, minutes, mbar. ' +
        `Ids are UUIDs made by whoever sends. Errors are problem documents (RFC 9457). Version of the calculations: ${CALCULATION_VERSION}.`,
    },
    servers: [{ url: '/' }],
    tags: [
      { name: 'compute', description: 'Works on what is sent alone and keeps nothing' },
      { name: 'moulds', description: 'The moulds and how they stand' },
      { name: 'log', description: 'What was done to a mould; entries are added and never changed' },
      { name: 'search', description: 'Finds things in the whole book' },
      { name: 'pictures', description: 'Photos and drawings with a mould' },
      { name: 'about' },
    ],
    security: [{ token: [] }, { session: [] }],
    paths,
    components: {
      securitySchemes: {
        token: {
          type: 'http',
          scheme: 'bearer',
          description: 'Made by a lead on People, or with: npm run token -- --name X --role laminator',
        },
        session: {
          type: 'apiKey',
          in: 'cookie',
          name: 'better-auth.session_token',
          description: "The cookie of a signed-in person; changes only from the shop's own pages",
        },
      },
      schemas: jsonSchemas(),
    },
  }
}
