import 'server-only'
import { mouldStates } from '#lib/core/log/index'
import { hitKinds, longestAsked } from '#lib/core/search/index'
import { rackSorts } from '#lib/schema/rack'
import {
  coatExample,
  homographyExample,
  joinExample,
  offsetExample,
  outlineExample,
  patchExample,
  plateExample,
  pullExample,
} from './examples'
import { refTo, type SchemaName } from './schemas'

const json = (name: SchemaName, examples: Readonly<Record<string, unknown>> = {}) => ({
  'application/json': {
    schema: refTo(name),
    ...(Object.keys(examples).length > 0
      ? { examples: Object.fromEntries(Object.entries(examples).map(([key, value]) => [key, { value }])) }
      : {}),
  },
})

const answers = (description: string, name: SchemaName) => ({ description, content: json(name) })

const refused = (description: string) => ({
  description,
  content: { 'application/problem+json': { schema: refTo('Problem') } },
})

const signedIn = {
  '401': refused('Nobody is signed in, or the token is not known'),
  '403': refused("This role may not do it, or the change does not come from the shop's own pages"),
}

const body = {
  '400': refused("The body can't be read"),
  '413': refused('The body is too large'),
  '415': refused('The body is of another kind'),
}

const unprocessable = { '422': refused('The input is refused whole; `fields` tells what is wrong and where') }

const mouldCode = {
  name: 'code',
  in: 'path',
  required: true,
  description: 'The code of the mould, compared without case',
  schema: { type: 'string' },
  example: 'LH-P2',
}

const unit = { type: 'string', enum: ['mm', 'cm', 'm', 'in'] }

/** Every route of the API, by path and method. */
export const paths = {
  '/api/v1/read/outline': {
    post: {
      operationId: 'readOutline',
      tags: ['compute'],
      summary: 'Reads an outline from a file or from text; keeps nothing',
      description:
        'The verdict is the answer, with status 200 also where it refuses. Files up to 8 MB. A file whose unit nothing tells is asked for it: send `unit`.',
      parameters: [
        {
          name: 'name',
          in: 'query',
          description: 'Name of the file, when it is the body itself',
          schema: { type: 'string' },
        },
        {
          name: 'unit',
          in: 'query',
          description: 'Unit of the file, when it is the body itself',
          schema: unit,
        },
      ],
      requestBody: {
        required: true,
        content: {
          ...json('OutlineRequest', { csv: outlineExample }),
          'multipart/form-data': {
            schema: {
              type: 'object',
              required: ['file'],
              properties: { file: { type: 'string', contentMediaType: 'application/octet-stream' }, unit },
            },
          },
          'application/octet-stream': { schema: {} },
        },
      },
      responses: { '200': answers('What was read', 'Outline'), ...body, ...unprocessable, ...signedIn },
    },
  },
  '/api/v1/compute/patch': {
    post: {
      operationId: 'computePatch',
      tags: ['compute'],
      summary: 'Plans a patch from what is sent alone; keeps nothing',
      requestBody: { required: true, content: json('PatchRequest', { opening: patchExample }) },
      responses: {
        '200': answers('Plies, footprint, findings, working', 'Patch'),
        ...body,
        '422': refused('The input is refused, or no plan fits: `detail` is the reason'),
        ...signedIn,
      },
    },
  },
  '/api/v1/compute/offset': {
    post: {
      operationId: 'computeOffset',
      tags: ['compute'],
      summary: 'Grows and shrinks an outline by true offsets with round corners; keeps nothing',
      requestBody: { required: true, content: json('OffsetRequest', { rectangle: offsetExample }) },
      responses: {
        '200': answers('The regions for each growth', 'Offsets'),
        ...body,
        ...unprocessable,
        ...signedIn,
      },
    },
  },
  '/api/v1/compute/homography': {
    post: {
      operationId: 'computeHomography',
      tags: ['compute'],
      summary: 'Places on the face what was traced in a photo, by marks of known place; keeps nothing',
      description:
        'At least four marks, of which no three should lie in a line. Pixels run to the right and downwards from the upper left corner, u and v in mm as on the face. The face is taken for a plane, and what the lens bends is not taken out. Points are placed one by one: straight edges stay straight, an arc is joined by chords between the points that were sent (within 0.01 mm when they are no farther apart than the square root of 0.08 times the radius in mm).',
      requestBody: { required: true, content: json('HomographyRequest', { opening: homographyExample }) },
      responses: {
        '200': answers('The homography, residuals, outline on the face, findings, working', 'Homography'),
        ...body,
        '422': refused(
          'The input is refused, or the marks give no answer: `detail` is the reason, `findings` tell more',
        ),
        ...signedIn,
      },
    },
  },
  '/api/v1/compute/plate': {
    post: {
      operationId: 'computePlate',
      tags: ['compute'],
      summary:
        'Stiffness A, B and D of a stack, its constants, expansion and warp by classical laminate theory; keeps nothing',
      requestBody: { required: true, content: json('PlateRequest', { textbook: plateExample }) },
      responses: {
        '200': answers('Figures with their working', 'Plate'),
        ...body,
        ...unprocessable,
        ...signedIn,
      },
    },
  },
  '/api/v1/compute/join': {
    post: {
      operationId: 'computeJoin',
      tags: ['compute'],
      summary:
        'Stresses of a scarf, of steps or of a lap by elementary methods: a screen, never an approval; keeps nothing',
      requestBody: { required: true, content: json('JoinRequest', { scarf: joinExample }) },
      responses: {
        '200': answers('Figures with their working', 'Join'),
        ...body,
        ...unprocessable,
        ...signedIn,
      },
    },
  },
  '/api/v1/moulds': {
    get: {
      operationId: 'listMoulds',
      tags: ['moulds'],
      summary:
        'The rack: moulds with state, counts, release, and what must be settled before the next lay-up',
      parameters: [
        {
          name: 'find',
          in: 'query',
          description: 'Words in code, name, part, pattern, place',
          schema: { type: 'string' },
        },
        { name: 'state', in: 'query', schema: { type: 'string', enum: [...mouldStates] } },
        { name: 'sort', in: 'query', schema: { type: 'string', enum: [...rackSorts], default: 'code' } },
        { name: 'page', in: 'query', schema: { type: 'integer', minimum: 1, default: 1 } },
        { name: 'size', in: 'query', schema: { type: 'integer', minimum: 1, maximum: 500, default: 500 } },
      ],
      responses: { '200': answers('The rack', 'MouldList'), ...signedIn, ...unprocessable },
    },
  },
  '/api/v1/moulds/{code}': {
    parameters: [mouldCode],
    get: {
      operationId: 'readMould',
      tags: ['moulds'],
      summary: 'One mould with its face areas, locating points and patches',
      responses: {
        '200': answers('The mould', 'Mould'),
        '404': refused('There is no such mould'),
        ...signedIn,
      },
    },
  },
  '/api/v1/moulds/{code}/log': {
    parameters: [mouldCode],
    get: {
      operationId: 'listLog',
      tags: ['log'],
      summary: 'The history of a mould, newest first, entries that were put right included',
      parameters: [
        {
          name: 'kind',
          in: 'query',
          description: 'Only entries of this kind; may be given several times',
          explode: true,
          schema: { type: 'array', items: { type: 'string' } },
        },
        { name: 'limit', in: 'query', schema: { type: 'integer', minimum: 1, maximum: 5000, default: 500 } },
      ],
      responses: {
        '200': answers('The entries', 'Log'),
        '404': refused('There is no such mould'),
        ...unprocessable,
        ...signedIn,
      },
    },
    post: {
      operationId: 'writeLog',
      tags: ['log'],
      summary: 'Appends an entry; sent twice with the same id, stored once',
      requestBody: { required: true, content: json('LogRequest', { pull: pullExample, coat: coatExample }) },
      responses: {
        '201': answers('Written now', 'LogEntry'),
        '200': answers('It stood there already with the same content', 'LogEntry'),
        ...body,
        '404': refused('There is no such mould, or no such entry to put right'),
        '409': refused(
          'Stored with other content before (`stored`), or somebody else changed the mould meanwhile (`current`)',
        ),
        ...unprocessable,
        ...signedIn,
      },
    },
  },
  '/api/v1/find': {
    get: {
      operationId: 'find',
      tags: ['search'],
      summary: 'Searches codes, names, notes, places, people and the log, forgiving slips of typing',
      parameters: [
        {
          name: 'q',
          in: 'query',
          required: true,
          description: 'Words that are all found: "hull port", "LH-P patch 7", "floor B5", "D03"',
          schema: { type: 'string', maxLength: longestAsked },
        },
        {
          name: 'in',
          in: 'query',
          description: 'Only this kind',
          schema: { type: 'string', enum: [...hitKinds] },
        },
        {
          name: 'limit',
          in: 'query',
          description: 'Most hits of each kind',
          schema: { type: 'integer', minimum: 1, maximum: 100, default: 8 },
        },
        {
          name: 'brief',
          in: 'query',
          allowEmptyValue: true,
          description: 'Sent: only what has a name or a code, for suggestions while typing',
          schema: { type: 'string' },
        },
      ],
      responses: { '200': answers('What was found, by kind', 'Search'), ...unprocessable, ...signedIn },
    },
  },
  '/api/v1/sets/{code}/log': {
    parameters: [
      {
        name: 'code',
        in: 'path',
        required: true,
        description: 'The code of the split mould, compared without case',
        schema: { type: 'string' },
        example: 'LH-SET',
      },
    ],
    post: {
      operationId: 'writeSetLog',
      tags: ['log'],
      summary:
        'Appends a pull or a clearance on every piece of a split mould, all or none; sent twice, stored once',
      requestBody: { required: true, content: json('SetLogRequest', { pull: pullExample }) },
      responses: {
        '201': answers('Written now', 'SetLog'),
        '200': answers('It stood there already with the same content', 'SetLog'),
        ...body,
        '404': refused('There is no such split mould, or it has no pieces'),
        '409': refused('Stored with other content before (`stored`)'),
        ...unprocessable,
        ...signedIn,
      },
    },
  },
  '/api/v1/moulds/{code}/pictures': {
    parameters: [mouldCode],
    get: {
      operationId: 'listPictures',
      tags: ['pictures'],
      summary: 'Photos and drawings of a mould, newest first; those that were put away left out',
      parameters: [
        { name: 'view', in: 'query', description: 'Only this fixed view', schema: { type: 'string' } },
      ],
      responses: {
        '200': answers('The pictures', 'PictureList'),
        '404': refused('There is no such mould'),
        ...signedIn,
      },
    },
    post: {
      operationId: 'addPicture',
      tags: ['pictures'],
      summary: 'Takes a photo or a drawing in; sent twice with the same id, stored once',
      description:
        'JPEG, PNG, WebP, GIF, AVIF, TIFF up to 25 MB and 60 megapixels, judged by content; a drawing also as PDF. Photos are turned right, made at most 2560 px, and kept without EXIF: where they were taken is not kept. 503: not now, send it again; 507: the disk of the database is full.',
      requestBody: {
        required: true,
        content: {
          'multipart/form-data': {
            schema: {
              type: 'object',
              required: ['file', 'id'],
              properties: {
                file: { type: 'string', contentMediaType: 'application/octet-stream' },
                id: { type: 'string', format: 'uuid' },
                kind: { type: 'string', enum: ['photo', 'drawing'], default: 'photo' },
                caption: { type: 'string' },
                view: { type: 'string', description: 'Name of a fixed view: "floor from the front"' },
                takenOn: {
                  type: 'string',
                  format: 'date',
                  description: 'Left out: the day that the photo itself names, else today',
                },
                entryId: { type: 'string', format: 'uuid', description: 'The entry that it stands beside' },
              },
            },
          },
        },
      },
      responses: {
        '201': answers('Stored now', 'AddedPicture'),
        '200': answers('It stood there already with the same content', 'AddedPicture'),
        ...body,
        '404': refused('There is no such mould'),
        '409': refused('Stored with other content before (`stored`)'),
        ...unprocessable,
        ...signedIn,
      },
    },
  },
  '/api/v1/openapi.json': {
    get: {
      operationId: 'readDescription',
      tags: ['about'],
      summary: 'This description',
      security: [],
      responses: {
        '200': {
          description: 'OpenAPI 3.1',
          content: { 'application/json': { schema: { type: 'object' } } },
        },
      },
    },
  },
  '/api/health': {
    get: {
      operationId: 'readHealth',
      tags: ['about'],
      summary: 'Whether the shop can work',
      security: [],
      responses: {
        '200': answers('The database answers', 'Health'),
        '503': answers('The database does not answer', 'Health'),
      },
    },
  },
} as const
