import { MaterialInput, StackInput } from '#lib/schema/material'
import { MouldInput, PartInput, PatternInput } from '#lib/schema/mould'
import { MouldSetInput } from '#lib/schema/mould-set'
import { addArea, addMould, addPointIssue, addReadings } from '#lib/services/moulds'
import { addPart } from '#lib/services/parts'
import { addPattern } from '#lib/services/patterns'
import { addSet } from '#lib/services/sets'
import { addMaterial, addStack } from '#lib/services/stores'
import type { FaceData } from '../data/face'
import { spatAndPodFaces } from '../data/hand-faces'
import { hullFaces } from '../data/hull-faces'
import { laidPlans } from '../data/laid-plans'
import { largeMoulds } from '../data/large-moulds'
import { parts } from '../data/lineage'
import { materials, stacks } from '../data/materials'
import { openPlans } from '../data/open-plans'
import { patternLog } from '../data/pattern-log'
import { patterns } from '../data/patterns'
import { patchKey } from '../data/plan-story'
import { issues } from '../data/points'
import { smallMoulds } from '../data/small-moulds'
import { mouldSets } from '../data/split-moulds'
import { tubAndTrayFaces } from '../data/tub-tray-faces'
import { upperFaces } from '../data/upper-faces'
import { besideBooks } from '../diary/beside'
import { deckBooks } from '../diary/deck'
import { spatAndPodBooks } from '../diary/hands'
import { blockBook } from '../diary/hull-block'
import { portBook } from '../diary/hull-port'
import { starboardBook } from '../diary/hull-starboard'
import { ringNoseFairingBooks } from '../diary/ring-nose-fairing'
import { tubAndTrayBooks } from '../diary/tub-tray'
import { writeBuiltParts } from './built-parts'
import { writeLog } from './log'
import { actorOf, readPasswords, writeShop } from './people'
import { writePictures } from './pictures'
import { writePlan } from './plans'
import { writeCards, writeLots } from './stores'

/** Everything in the order in which the shop could have written it. */
export async function loadShop(): Promise<void> {
  await writeShop(readPasswords(process.env.MOULDWRIGHT_SECRETS))
  await writeStores()
  await writeMoulds()
  const places = await writeTimeline()
  const placeOf = (mould: string, number: number) => places.get(patchKey(mould, number)) ?? ''
  const hull = [portBook(placeOf), starboardBook(placeOf), blockBook()]
  const upper = [...deckBooks(), ...ringNoseFairingBooks()]
  const books = [...hull, ...upper, ...spatAndPodBooks(), ...tubAndTrayBooks()]
  await writeLog([...books, ...besideBooks()], patternLog)
  await writeLots()
  await writeBuiltParts()
  await writePictures(books)
}

async function writeStores(): Promise<void> {
  const lead = actorOf('MO')
  for (const material of materials) await addMaterial(lead, MaterialInput.parse(material))
  for (const stack of stacks) await addStack(lead, StackInput.parse(stack))
  await writeCards()
}

async function writeMoulds(): Promise<void> {
  const lead = actorOf('MO')
  for (const part of parts) await addPart(lead, PartInput.parse(part))
  for (const pattern of patterns) await addPattern(lead, PatternInput.parse(pattern))
  for (const set of mouldSets) await addSet(lead, MouldSetInput.parse(set))
  for (const mould of [...largeMoulds, ...smallMoulds]) await addMould(lead, MouldInput.parse(mould))
  for (const face of [...hullFaces, ...upperFaces, ...spatAndPodFaces, ...tubAndTrayFaces])
    await writeFace(face)
}

async function writeFace({ area, readings, measured }: FaceData): Promise<void> {
  await addArea(actorOf('MO'), area)
  await addReadings(actorOf(measured.by), {
    areaId: area.id,
    measuredOn: measured.on,
    readings: [...readings],
  })
}

/**
 * Issues of points and patch plans by their days: a plan is computed from the points that were in force then.
 * Answers where each patch lies.
 */
async function writeTimeline(): Promise<ReadonlyMap<string, string>> {
  const places = new Map<string, string>()
  const steps = [
    ...issues.map(({ by, issue }) => ({
      on: issue.issuedOn,
      write: () => addPointIssue(actorOf(by), issue),
    })),
    ...[...laidPlans, ...openPlans].map((story) => ({
      on: story.sketched.on,
      write: async () => {
        const plan = await writePlan(story)
        places.set(patchKey(story.mould, story.number), plan.result.value.place)
      },
    })),
  ]
  for (const step of steps.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))) await step.write()
  return places
}
