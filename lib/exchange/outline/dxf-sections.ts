import { brokenOff, type Tag, tagsOf } from './dxf-tags'
import { lineName, Refused, stop } from './finding'

export interface DxfEntity {
  /** As the file calls it: LINE, ARC ... */
  readonly type: string
  readonly line: number
  readonly tags: readonly Tag[]
}

export interface DxfContents {
  /** Header variables by name ("$INSUNITS"), the first value of each. */
  readonly header: ReadonlyMap<string, Tag>
  /** Records of the tables, of all kinds one after the other: LAYER among them. */
  readonly tables: readonly DxfEntity[]
  /** BLOCK, what it holds, ENDBLK, and so on. */
  readonly blocks: readonly DxfEntity[]
  readonly entities: readonly DxfEntity[]
  /** False when the mark EOF is missing, though all that was drawn is there. */
  readonly ended: boolean
}

interface Growing {
  readonly type: string
  readonly line: number
  readonly tags: Tag[]
}

/** Header, tables, blocks and drawn entities; other sections are passed over. Throws Refused where the file is damaged. */
export function dxfContents(text: string): DxfContents {
  const header = new Map<string, Tag>()
  const [tables, blocks, entities]: [Growing[], Growing[], Growing[]] = [[], [], []]
  const records = new Map([
    ['TABLES', tables],
    ['BLOCKS', blocks],
    ['ENTITIES', entities],
  ])
  let section: string | null = null
  let naming = false
  let variable: string | null = null
  let lastLine = 1
  for (const tag of tagsOf(text)) {
    lastLine = tag.line
    if (naming) {
      section = sectionName(tag)
      naming = false
    } else if (tag.code === 0 && tag.value === 'EOF') {
      if (section !== null) throw brokenOff(tag.line)
      return { header, tables, blocks, entities, ended: true }
    } else if (section === null) {
      assertSectionBegins(tag)
      naming = true
    } else if (tag.code === 0 && tag.value === 'ENDSEC') {
      section = null
    } else if (section === 'HEADER') {
      if (tag.code === 9) variable = tag.value.toUpperCase()
      else if (variable !== null && !header.has(variable)) header.set(variable, tag)
    } else {
      const found = records.get(section)
      if (found === undefined) continue
      if (tag.code === 0) found.push({ type: tag.value.toUpperCase(), line: tag.line, tags: [] })
      else entityOf(found, tag).tags.push(tag)
    }
  }
  if (section !== null && section !== 'OBJECTS') throw brokenOff(lastLine)
  return { header, tables, blocks, entities, ended: false }
}

function sectionName(tag: Tag): string {
  if (tag.code === 2) return tag.value.toUpperCase()
  throw damaged(tag, 'the name of the section')
}

function assertSectionBegins(tag: Tag): void {
  if (tag.code !== 0 || tag.value !== 'SECTION') throw damaged(tag, 'the beginning of a section')
}

function entityOf<Entity>(entities: readonly Entity[], tag: Tag): Entity {
  const entity = entities.at(-1)
  if (entity === undefined) throw damaged(tag, 'the name of an entity')
  return entity
}

function damaged(tag: Tag, expected: string): Refused {
  return new Refused(
    stop(
      'dxf-order',
      `Here ${expected} must stand; found group ${tag.code} with "${tag.value.slice(0, 40)}".`,
      lineName(tag.line),
      'The file is damaged: save it again as DXF in text form.',
      { line: tag.line },
    ),
  )
}
